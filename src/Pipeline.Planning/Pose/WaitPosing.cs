using System.Collections.Immutable;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Gathers the waits of all routes. Of several least times between the same two edges only the longest is kept, of several greatest ones
/// only the shortest: the others follow.
/// </summary>
internal sealed class WaitPosing(Bench bench)
{
    private readonly List<Cause> causes = [];
    private readonly Dictionary<(int From, Edge FromEdge, int To, Edge ToEdge, Scope Scope), (long Ticks, int Cause)> least = [];
    private readonly Dictionary<(int From, Edge FromEdge, int To, Edge ToEdge), (long Ticks, int Cause, double Hold)> greatest = [];
    private readonly List<Wait> holds = [];

    /// <summary>True if some wait has no figure because the bench is too damp.</summary>
    public bool IsTooDamp { get; private set; }

    /// <summary>Why each wait is there, by the wait's reason.</summary>
    public ImmutableArray<Cause> Causes => [.. causes];

    /// <summary>The waits for the scheduler, in the order in which they were first asked for.</summary>
    public ImmutableArray<Wait> ForScheduler()
    {
        var waits = ImmutableArray.CreateBuilder<Wait>(least.Count + greatest.Count + holds.Count);
        foreach (var (key, (ticks, cause)) in least)
            waits.Add(new Wait(key.From, key.FromEdge, key.To, key.ToEdge, ticks, null, key.Scope, Reason: cause));
        foreach (var (key, (ticks, cause, hold)) in greatest)
            waits.Add(new Wait(key.From, key.FromEdge, key.To, key.ToEdge, null, ticks, HoldWeight: hold, Reason: cause));
        waits.AddRange(holds);
        return waits.ToImmutable();
    }

    /// <summary>Order, rules and masks of one route.</summary>
    /// <param name="index">Index of the route.</param>
    /// <param name="route">The route.</param>
    /// <param name="first">Index of the activity of its first step.</param>
    /// <param name="paceOf">How close to the low figures a step follows on what it waits for, by its index.</param>
    public void Add(int index, WalkedRoute route, int first, Func<int, Pace> paceOf)
    {
        foreach (var order in route.Order)
            Least(first + order.Earlier, Edge.Finish, first + order.Later, Edge.Start, 0, new Cause.Order(index, order));
        var pinned = route.Route.Pins.Select(pin => pin.Step).ToHashSet();
        foreach (var wait in route.Waits)
        {
            // between two decided times there is nothing left to plan; the judge of times speaks about them
            if (pinned.Contains(wait.Needs.Since) && pinned.Contains(wait.Needs.Step))
                continue;
            Ruled(index, route, first, paceOf(wait.Needs.Step), wait);
        }

        foreach (var moment in route.Moments)
            Awaits(index, moment, first, paceOf(moment.Step.Index));
        foreach (var mask in route.Masks)
        {
            if (mask.OffStep is { } off)
                holds.Add(new Wait(first + mask.OnStep, Edge.Finish, first + off, Edge.Start, 0, null, HoldWeight: 1, Reason: Note(new Cause.Masked(index, mask))));
        }
    }

    /// <summary>The model is ready when its last layers can be handled or have cured, as it is wanted for.</summary>
    public void AddReady(int index, int last, int ready, double minutes, int step) =>
        Least(last, Edge.Finish, ready, Edge.Start, Clock.AtLeast(minutes), new Cause.Ready(index, step), Scope.WholeLot);

    private void Ruled(int index, WalkedRoute route, int first, Pace pace, RuledWait wait)
    {
        var needs = wait.Needs;
        var waiting = Waiting.Of(needs, bench.Climate);
        IsTooDamp |= waiting.IsTooDamp;
        var from = first + needs.Since;
        var to = first + needs.Step;
        var fromEdge = needs.SinceStart ? Edge.Start : Edge.Finish;
        var toEdge = needs.ToFinish ? Edge.Finish : Edge.Start;
        var cause = new Cause.Ruled(index, wait);
        if ((pace == Pace.Brisk ? waiting.LowMinutes : waiting.ComfortableMinutes) is { } minutes)
            Least(from, fromEdge, to, toEdge, Clock.AtLeast(minutes), cause);
        if (waiting.LimitMinutes is { } limit)
        {
            var isMask = route.Masks.Any(mask => mask.OnStep == needs.Since && mask.OffStep == needs.Step);
            Greatest(from, fromEdge, to, toEdge, Clock.AtMost(limit), cause, isMask ? 0 : 1);
        }
    }

    // A step that only waits for a state finishes when the layer below has reached it.
    private void Awaits(int index, Moment moment, int first, Pace pace)
    {
        foreach (var await in moment.Step.Deeds.OfType<Deed.Await>())
        {
            foreach (var area in moment.Step.Areas)
            {
                if (moment.Before[area].Top is not { Step: >= 0 } layer || layer.TimeTo(await.State) is not { } time)
                    continue;
                var factor = DryingFactor.For(layer.Family?.Carrier ?? Carrier.None, bench.Climate, time.Comfortable);
                IsTooDamp |= factor is null;
                var minutes = (pace == Pace.Brisk ? time.Low : time.Comfortable).Minutes * (factor ?? 1);
                Least(first + layer.Step, Edge.Finish, first + moment.Step.Index, Edge.Finish, Clock.AtLeast(minutes), new Cause.Awaited(index, layer.Step, moment.Step.Index, await.State));
            }
        }
    }

    private void Least(int from, Edge fromEdge, int to, Edge toEdge, long ticks, Cause cause, Scope scope = Scope.UnitByUnit)
    {
        var key = (from, fromEdge, to, toEdge, scope);
        if (!least.TryGetValue(key, out var known) || ticks > known.Ticks)
            least[key] = (ticks, Note(cause));
    }

    private void Greatest(int from, Edge fromEdge, int to, Edge toEdge, long ticks, Cause cause, double hold)
    {
        var key = (from, fromEdge, to, toEdge);
        if (!greatest.TryGetValue(key, out var known) || ticks < known.Ticks)
            greatest[key] = (ticks, Note(cause), hold);
    }

    private int Note(Cause cause)
    {
        causes.Add(cause);
        return causes.Count - 1;
    }
}
