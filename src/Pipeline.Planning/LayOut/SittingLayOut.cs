using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>The tasks of a schedule gathered into days and sittings.</summary>
internal sealed class SittingLayOut(Timetable table, IReadOnlyDictionary<string, Paint> paints)
{
    private readonly TaskLayOut tasks = new(table);
    private readonly Nightly nightly = new(table);
    private readonly FreeAtEnd free = new(table);

    /// <summary>Every mask from on to off.</summary>
    public Sequence<PlannedMask> Masks => nightly.Masks;

    /// <summary>Days with something to do, in order.</summary>
    public Sequence<PlannedDay> Days()
    {
        var sittings = new SortedDictionary<(int Sitting, int Worker), List<(long Start, int? Run, CloseDown? CloseDown)>>();
        for (var r = 0; r < table.Runs.Count; r++)
        {
            var run = table.Runs[r];
            if (run.Worker >= 0)
                Of(run.Start, run.Worker).Add((run.Start, r, null));
        }

        foreach (var close in table.Planned.Schedule.CloseDowns)
            Of(close.Start, close.Worker).Add((close.Start, null, close));
        var leaves = sittings.GroupBy(at => at.Key.Sitting).ToDictionary(group => group.Key, group => group.ToDictionary(at => at.Key.Worker, at => at.Value.Max(EndOf)));
        return sittings
            .Select(at => (table.Posed.Sittings[at.Key.Sitting].Date, Sitting: Sitting(at.Key.Sitting, at.Key.Worker, at.Value, leaves[at.Key.Sitting])))
            .GroupBy(at => at.Date)
            .Select(day => new PlannedDay(day.Key, day.Select(at => at.Sitting).ToSequence()))
            .ToSequence();

        List<(long Start, int? Run, CloseDown? CloseDown)> Of(long tick, int worker)
        {
            var key = (table.SittingAt(tick), worker);
            if (!sittings.TryGetValue(key, out var list))
                sittings[key] = list = [];
            return list;
        }
    }

    private long EndOf((long Start, int? Run, CloseDown? CloseDown) work) => work.Run is { } run ? table.Runs[run].End : work.CloseDown!.Start + work.CloseDown.Ticks;

    // What stands around when a sitting is left is told once, with the last of the painters who sit in it.
    private PlannedSitting Sitting(int index, int worker, List<(long Start, int? Run, CloseDown? CloseDown)> work, Dictionary<int, long> leaves)
    {
        var isLastPainter = worker == leaves.Keys.Max();
        var open = table.Posed.Sittings[index];
        var end = table.Clock.TickAt(open.End);
        var inOrder = work.OrderBy(at => at.Start).ThenBy(at => at.Run is null ? 1 : 0).ToList();
        var plain = inOrder.ConvertAll(at => at.Run is { } run ? tasks.OfRun(run) : tasks.OfCloseDown(at.CloseDown!));
        var (mixes, withMixes) = MixOrders.Of(plain, paints);
        var steps = inOrder.Where(at => at.Run is not null).Select(at => table.StepOf(table.Runs[at.Run!.Value].Activity)!).ToList();
        return new PlannedSitting
        {
            Painter = table.Batch.Bench.Painters[worker].Name,
            From = open.Start.InZone(table.Zone),
            To = open.End.InZone(table.Zone),
            TakeOut = TakeOut.Of(steps, withMixes, mixes, paints),
            Mixes = mixes,
            Tasks = withMixes,
            Drying = isLastPainter ? nightly.DryingAt(leaves.Values.Max(), end) : [],
            MasksOn = isLastPainter ? nightly.MasksAt(end) : [],
            Cautions = steps.SelectMany(step => step.Cautions).DistinctBy(caution => caution.Name).ToSequence(),
            AttendedMinutes = withMixes.Sum(task => (int)(task.To - task.From).TotalMinutes),
            MostPerDayMinutes = MostPerDay(open.Date),
            Free = free.After(worker, leaves[worker]),
        };
    }

    private int? MostPerDay(LocalDate date) =>
        table.Batch.Bench.MostPerDay is { } most && most.Minutes < table.Posed.Sittings.Where(sitting => sitting.Date == date).Sum(sitting => sitting.Minutes)
            ? (int)most.Minutes
            : null;
}
