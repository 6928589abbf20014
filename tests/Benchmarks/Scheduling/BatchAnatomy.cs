using System.Globalization;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Where the open hours of a schedule go: work, set-ups, clean-outs, waits between runs, rests at a sitting's end.</summary>
internal static class BatchAnatomy
{
    public static string Of(Problem problem, Outcome.Planned plan)
    {
        var runs = plan.Schedule.Runs.Where(r => r.Worker >= 0).ToArray();
        var work = runs.Sum(r => r.End - r.WorkStart);
        var setUps = runs.Sum(r => r.SetUp);
        var cleanOuts = runs.Sum(r => r.CleanOut);
        var finish = plan.Score.Finish;
        long waiting = 0, rest = 0, empty = 0, closing = 0;
        foreach (var open in problem.Workers[0].Open.Open.Where(o => o.Start < finish))
        {
            var mine = runs.Where(r => r.Start < open.End && r.Start >= open.Start).Select(r => (r.Start, r.End))
                .Concat(plan.Schedule.CloseDowns.Where(c => c.Start >= open.Start && c.Start < open.End).Select(c => (c.Start, End: c.Start + c.Ticks)))
                .OrderBy(b => b.Start).ToArray();
            closing += plan.Schedule.CloseDowns.Where(c => c.Start >= open.Start && c.Start < Math.Min(finish, open.End)).Sum(c => c.Ticks);
            var end = Math.Min(open.End, finish);
            var at = open.Start;
            foreach (var (start, until) in mine)
            {
                waiting += Math.Max(0, start - at);
                at = Math.Max(at, until);
            }

            if (mine.Length == 0)
                empty += end - open.Start;
            else
                rest += Math.Max(0, end - at);
        }

        var leastSetUps = problem.Activities.Sum(a => a.SetUp);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"           work {work}, set-ups {setUps} (unparted {leastSetUps}), clean-outs {cleanOuts}, close-downs {closing}, waiting {waiting}, rests {rest}, empty sittings {empty}, runs {runs.Length} of {problem.Activities.Length}; bound by {plan.Bound.Source} {plan.Bound.OpenTicks - plan.Bound.GapOpenTicks}{(plan.Bound.IsBestAsParted ? ", proved best as parted" : "")}");
    }
}
