using NodaTime;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>How far ahead sittings are looked at: until the work surely fits, and further if it did not.</summary>
internal sealed class Horizon
{
    private static readonly Duration Furthest = Duration.FromDays(3 * 366);

    private readonly Bench bench;
    private readonly Instant from;

    public Horizon(Walked walked, Instant from, Pace pace)
    {
        (bench, this.from) = (walked.Batch.Bench, from);
        var attended = walked.Routes.Sum(route => route.Route.Steps.Sum(step =>
            step.Work.PassOver(route.Route.Model.Count).Minutes * step.Work.Passes));
        var days = 14 + (1.5 * walked.Routes.Select(route => ChainMinutes(route, bench, pace)).DefaultIfEmpty(0).Max() / 1440);
        var latestPin = walked.Routes.SelectMany(route => route.Route.Pins).Select(pin => Pinned.At(pin, bench.Zone)).DefaultIfEmpty(from).Max();
        Until = Instant.Min(from + Furthest, Instant.Min(from + Furthest, Instant.Max(from, latestPin)) + Duration.FromDays(Math.Min(days, Furthest.TotalDays)));
        // set-ups are paid again where a lot is parted, and tools are cleaned: twice the bare work, shared by nobody, surely holds it
        var needed = (2 * attended) + 240;
        while (OpenMinutes() < needed && TryExtend())
        {
        }
    }

    /// <summary>Sittings that begin after this are not looked at.</summary>
    public Instant Until { get; private set; }

    /// <summary>True if nobody sits at the bench within three years.</summary>
    public static bool HasNoSitting(Bench bench, Instant from) =>
        (bench.Weekly.IsEmpty && bench.Dated.IsEmpty) || OpenSittings.Between(bench, from, from + Furthest).IsEmpty;

    /// <summary>Looks twice as far. False if that brings no further sitting.</summary>
    public bool TryExtend(int sittings) => TryExtend() && OpenSittings.Between(bench, from, Until).Length > sittings;

    private bool TryExtend()
    {
        if (Until >= from + Furthest)
            return false;
        Until = Instant.Min(from + Furthest, Until + (Until - from));
        return true;
    }

    private double OpenMinutes() => OpenSittings.Between(bench, from, Until)
        .GroupBy(sitting => sitting.Date, sitting => sitting.Minutes)
        .Sum(day => Math.Min(day.Sum(), bench.MostPerDay?.Minutes ?? double.MaxValue));

    // The longest chain of work and waits through one route, as if the bench were always open.
    private static double ChainMinutes(WalkedRoute route, Bench bench, Pace pace)
    {
        var steps = route.Route.Steps;
        var done = new double[steps.Count];
        var orders = route.Order.ToLookup(order => order.Later, order => order.Earlier);
        var waits = route.Waits.ToLookup(wait => wait.Needs.Step, wait => wait.Needs);
        for (var s = 0; s < steps.Count; s++)
        {
            double start = 0;
            foreach (var earlier in orders[s].Where(e => e < s))
                start = Math.Max(start, done[earlier]);
            foreach (var needs in waits[s].Where(n => n.Since < s))
            {
                var waiting = Waiting.Of(needs, bench.Climate);
                start = Math.Max(start, done[needs.Since] + ((pace == Pace.Brisk ? waiting.LowMinutes : waiting.ComfortableMinutes) ?? 0));
            }

            done[s] = start + Passing.Minutes(steps[s], bench, pace);
        }

        return done.DefaultIfEmpty(0).Max();
    }
}
