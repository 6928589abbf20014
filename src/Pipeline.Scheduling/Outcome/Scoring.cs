namespace Pipeline.Scheduling;

/// <summary>Reads the score off a finished schedule, and says which of two is better.</summary>
internal sealed class Scoring(Problem problem, Keep? keep)
{
    private readonly KeptRuns? kept = keep is null ? null : new KeptRuns(keep);

    private readonly FinishGrain grain = new(problem);
    private readonly int[] done = [.. problem.Activities.Select(activity => activity.Past.Sum(run => run.Units))];

    public Score Of(Schedule schedule)
    {
        var finish = new long[problem.Activities.Length];
        Array.Fill(finish, long.MinValue);
        var starts = new Dictionary<(int, int), long>();
        long changes = schedule.CloseDowns.Sum(c => c.Ticks);
        double moved = 0;
        foreach (var run in schedule.Runs)
        {
            var activity = problem.Activities[run.Activity];
            var last = activity.StartIn(run, run.FirstUnit + run.Units - 1);
            finish[run.Activity] = Math.Max(finish[run.Activity], last + activity.PerUnit + activity.Unattended);
            changes += run.CleanOut + run.SetUp + run.PutAway;
            // what has been done has not been moved
            moved += run.FirstUnit < done[run.Activity] ? 0 : kept?.Moved(run.Activity, run.FirstUnit, run.Units, run.Worker, run.Start) ?? 0;
            for (var k = 0; k < run.Units; k++)
                starts[(run.Activity, run.FirstUnit + k)] = activity.StartIn(run, run.FirstUnit + k);
        }

        long hard = 0;
        double lateness = 0;
        foreach (var due in problem.Dues)
        {
            var late = Math.Max(0, finish[due.Activity] + due.Afterwards - due.By);
            lateness += late * due.WeightPerTick;
            if (due.IsHard)
                hard += late;
        }

        return new Score(hard, lateness, finish.Length == 0 ? 0 : finish.Max(), changes, Holds(starts), Unevenness(schedule), moved);
    }

    /// <summary>
    /// Negative if the first is better: due times first, then the aims in their order, the finish by the open stretch in which
    /// it lies; what is alike in all of them is told apart by the finish to the tick.
    /// </summary>
    public int Compare(Score x, Score y)
    {
        var order = x.HardLateness.CompareTo(y.HardLateness);
        if (order == 0)
            order = (x.Lateness > 0).CompareTo(y.Lateness > 0);
        if (order == 0)
            order = Lateness(x).CompareTo(Lateness(y));
        for (var i = 0; order == 0 && i < problem.Aims.Length; i++)
            order = Value(problem.Aims[i], x).CompareTo(Value(problem.Aims[i], y));
        return order == 0 && problem.Aims.Contains(Aim.FinishSoon) ? x.Finish.CompareTo(y.Finish) : order;
    }

    // What is late anyway is not moved about for every minute.
    private double Lateness(Score score) => score.Lateness == 0 || keep is null ? score.Lateness : score.Lateness + (score.Moved * keep.TicksPerMovedRun);

    private bool FollowsFinish => problem.Aims.IndexOf(Aim.FewChanges) is var place and > 0 && problem.Aims[place - 1] == Aim.FinishSoon;

    // What is kept in place weighs like an earlier finish, whichever aim comes first; but not for any amount of work more.
    private double Value(Aim aim, Score score)
    {
        var value = aim switch
        {
            Aim.FinishSoon => grain.Of(score.Finish),
            // in the same sitting a tick of clean-outs and set-ups is worth a tick of finish
            Aim.FewChanges => score.Changes + (FollowsFinish ? grain.Into(score.Finish) : 0),
            Aim.ShortHolds => score.Holds,
            _ => score.Unevenness,
        };
        return keep is not null && aim == problem.Aims[0] ? value + (FollowsFinish ? score.Changes : 0) + (score.Moved * keep.TicksPerMovedRun) : value;
    }

    private double Holds(Dictionary<(int, int), long> starts)
    {
        double holds = 0;
        foreach (var wait in problem.Waits.Where(w => w.HoldWeight > 0))
        {
            var from = problem.Activities[wait.From];
            var to = problem.Activities[wait.To];
            var shift = (wait.ToEdge == Edge.Finish ? to.PerUnit + to.Unattended : 0) - (wait.FromEdge == Edge.Finish ? from.PerUnit + from.Unattended : 0);
            if (wait.Scope == Scope.WholeLot)
                holds += wait.HoldWeight * (starts[(wait.To, to.Units - 1)] - starts[(wait.From, 0)] + shift);
            else
            {
                for (var k = 0; k < from.Units; k++)
                    holds += wait.HoldWeight * (starts[(wait.To, k)] - starts[(wait.From, k)] + shift);
            }
        }

        return holds;
    }

    private double Unevenness(Schedule schedule)
    {
        double squares = 0;
        double sum = 0;
        var attended = schedule.Runs.Where(r => r.Worker >= 0).Select(r => (r.Worker, r.Start, Ticks: r.End - r.Start))
            .Concat(schedule.CloseDowns.Select(c => (c.Worker, c.Start, c.Ticks)));
        foreach (var mine in attended.GroupBy(b => b.Worker))
        {
            var open = problem.Workers[mine.Key].Open.Open;
            var i = 0;
            double inside = 0;
            foreach (var block in mine.OrderBy(b => b.Start))
            {
                while (i < open.Length && open[i].End <= block.Start)
                {
                    squares += inside * inside;
                    inside = 0;
                    i++;
                }

                inside += block.Ticks;
                sum += block.Ticks;
            }

            squares += inside * inside;
        }

        return sum == 0 ? 0 : squares / sum;
    }
}
