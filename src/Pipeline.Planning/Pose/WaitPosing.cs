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

    /// <summary>Order, coats, rules and masks of one route.</summary>
    /// <param name="index">Index of the route.</param>
    /// <param name="route">The route.</param>
    /// <param name="passes">Which activities its steps are.</param>
    /// <param name="paceOf">How close to the low figures a step follows on what it waits for, by its index.</param>
    public void Add(int index, WalkedRoute route, PosedRoute passes, Func<int, Pace> paceOf)
    {
        foreach (var order in route.Order)
            Least(passes.Last(order.Earlier), Edge.Finish, passes.First(order.Later), Edge.Start, 0, new Cause.Order(index, order));
        foreach (var step in route.Route.Steps.Where(step => step.Work.Passes > 1))
            Coats(index, step, passes, paceOf(step.Index));
        var pinned = route.Route.Pins.Select(pin => pin.Step).ToHashSet();
        foreach (var wait in route.Waits)
        {
            // between two decided times there is nothing left to plan; the judge of times speaks about them
            if (IsDecided(wait.Needs.Since, wait.Needs.SinceStart) && IsDecided(wait.Needs.Step, !wait.Needs.ToFinish))
                continue;
            Ruled(index, route, passes, paceOf(wait.Needs.Step), wait);
        }

        foreach (var moment in route.Moments)
            Awaits(index, moment, passes, paceOf(moment.Step.Index));
        foreach (var mask in route.Masks)
        {
            if (mask.OffStep is { } off)
                holds.Add(new Wait(passes.Last(mask.OnStep), Edge.Finish, passes.First(off), Edge.Start, 0, null, HoldWeight: 1, Reason: Note(new Cause.Masked(index, mask))));
        }

        // of several coats that dry between, only the first has a decided time
        bool IsDecided(int step, bool isStart) => pinned.Contains(step) && (isStart || route.Route.Steps[step].Work.Passes == 1);
    }

    /// <summary>The model is ready when its last layers can be handled or have cured, as it is wanted for.</summary>
    public void AddReady(int index, int last, int ready, double minutes, int step) =>
        Least(last, Edge.Finish, ready, Edge.Start, Clock.AtLeast(minutes), new Cause.Ready(index, step), Scope.WholeLot);

    private void Coats(int index, Step step, PosedRoute passes, Pace pace)
    {
        foreach (var layer in step.Lays.Select(lay => lay.Layer))
            IsTooDamp |= layer.TimeTo(DryingState.Recoatable) is { } time && DryingFactor.For(layer.Family?.Carrier ?? Carrier.None, bench.Climate, time.Comfortable) is null;
        var dry = Clock.AtLeast(Passing.Between(step, bench, pace));
        foreach (var coat in passes.Of(step.Index).Skip(1))
            Least(coat - 1, Edge.Finish, coat, Edge.Start, dry, new Cause.NextCoat(index, step.Index));
    }

    private void Ruled(int index, WalkedRoute route, PosedRoute passes, Pace pace, RuledWait wait)
    {
        var needs = wait.Needs;
        var waiting = Waiting.Of(needs, bench.Climate);
        IsTooDamp |= waiting.IsTooDamp;
        var fromEdge = needs.SinceStart ? Edge.Start : Edge.Finish;
        var toEdge = needs.ToFinish ? Edge.Finish : Edge.Start;
        var from = passes.At(needs.Since, fromEdge);
        var to = passes.At(needs.Step, toEdge);
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
    private void Awaits(int index, Moment moment, PosedRoute passes, Pace pace)
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
                Least(passes.Last(layer.Step), Edge.Finish, passes.Last(moment.Step.Index), Edge.Finish, Clock.AtLeast(minutes), new Cause.Awaited(index, layer.Step, moment.Step.Index, await.State));
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
