namespace Pipeline.Scheduling;

/// <summary>Attended work inside the open hours, by somebody who may do it, one thing at a time, within the cap.</summary>
internal static class HoursAudit
{
    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        var blocks = new List<(int Worker, long Start, long End, bool Judged, string Name)>();
        foreach (var run in schedule.Runs)
        {
            var activity = problem.Activities[run.Activity];
            var isJudged = judged.Contains(run);
            if (isJudged && activity.IsAttended != (run.Worker != -1))
                faults.Add(new Fault(FaultKind.WrongWorker, $"'{activity.Name}' at {run.Start} has a worker and needs none, or the other way round."));
            else if (isJudged && (run.Worker < -1 || run.Worker >= problem.Workers.Length || (run.Worker >= 0 && !activity.Workers.IsEmpty && !activity.Workers.Contains(run.Worker))))
                faults.Add(new Fault(FaultKind.WrongWorker, $"'{activity.Name}' at {run.Start} is done by worker {run.Worker}, who may not."));
            else if (run.Worker >= 0)
                blocks.Add((run.Worker, run.Start, run.End, isJudged, activity.Name));
        }

        foreach (var close in schedule.CloseDowns)
        {
            if (close.Worker < 0 || close.Worker >= problem.Workers.Length)
                faults.Add(new Fault(FaultKind.CloseDown, $"The close-down at {close.Start} has no worker."));
            else
                blocks.Add((close.Worker, close.Start, close.Start + close.Ticks, true, "close-down"));
        }

        foreach (var mine in blocks.GroupBy(b => b.Worker))
        {
            var worker = problem.Workers[mine.Key];
            var sorted = mine.OrderBy(b => b.Start).ThenBy(b => b.End).ToList();
            var busyUntil = long.MinValue;
            var busyJudged = false;
            foreach (var block in sorted)
            {
                if (block.End > block.Start && block.Start < busyUntil && (block.Judged || busyJudged))
                    faults.Add(new Fault(FaultKind.WorkerTwice, $"{worker.Name} is busy until {busyUntil} and starts '{block.Name}' at {block.Start}."));
                if (block.End > busyUntil)
                    (busyUntil, busyJudged) = (block.End, block.Judged);
                if (block.Judged && !worker.Open.Open.Any(o => o.Start <= block.Start && block.End <= o.End))
                    faults.Add(new Fault(FaultKind.OpenHours, $"'{block.Name}' from {block.Start} to {block.End} is not inside one open interval of {worker.Name}."));
            }

            if (worker.MostPerDay is { } most)
                Cap(worker, most, sorted.ConvertAll(b => (b.Start, b.End, b.Judged)), faults);
        }
    }

    // Facts count towards the cap, but break it only if something judged comes on top.
    private static void Cap(Worker worker, long most, List<(long Start, long End, bool Judged)> blocks, List<Fault> faults)
    {
        foreach (var day in worker.Open.Days)
        {
            long ticks = 0;
            var isJudged = false;
            foreach (var open in day)
            {
                var inside = blocks.Where(b => b.Start < open.End && b.End > open.Start).ToList();
                ticks += inside.Sum(b => Math.Min(b.End, open.End) - Math.Max(b.Start, open.Start));
                isJudged |= inside.Any(b => b.Judged);
            }

            if (ticks > most && isJudged)
                faults.Add(new Fault(FaultKind.Cap, $"{worker.Name} has {ticks} attended ticks on the day from {day.First().Start}; {most} are allowed."));
        }
    }
}
