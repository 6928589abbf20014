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
            if (run.Worker >= 0 && !table.IsPast(r))
                Of(run.Start, run.Worker).Add((run.Start, r, null));
        }

        foreach (var close in table.Planned.Schedule.CloseDowns)
            Of(close.Start, close.Worker).Add((close.Start, null, close));
        return sittings
            .GroupBy(at => at.Key.Sitting, at => (at.Key.Worker, at.Value))
            .SelectMany(at => Sittings(at.Key, [.. at]).Select(sitting => (table.Posed.Sittings[at.Key].Date, Sitting: sitting)))
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

    // One sitting, once for each painter in it. What stands around when it is left is told once, with the last of them.
    private IEnumerable<PlannedSitting> Sittings(int index, IReadOnlyList<(int Worker, List<(long Start, int? Run, CloseDown? CloseDown)> Work)> painters)
    {
        var open = table.Posed.Sittings[index];
        var end = table.Clock.TickAt(open.End);
        var inOrder = painters.Select(at => at.Work.OrderBy(work => work.Start).ThenBy(work => work.Run is null ? 1 : 0).ToList()).ToList();
        var plain = painters.Select((at, p) => (Name(at.Worker), (IReadOnlyList<PlannedTask>)inOrder[p].ConvertAll(work => work.Run is { } run ? tasks.OfRun(run) : tasks.OfCloseDown(work.CloseDown!)))).ToList();
        var withMixes = MixOrders.Of(plain, paints);
        var lastEnd = painters.Max(at => at.Work.Max(EndOf));
        for (var p = 0; p < painters.Count; p++)
        {
            var isLastPainter = p == painters.Count - 1;
            var (mixes, done) = withMixes[p];
            var steps = inOrder[p].Where(at => at.Run is not null).Select(at => table.StepOf(table.Runs[at.Run!.Value].Activity)!).ToList();
            yield return new PlannedSitting
            {
                Painter = Name(painters[p].Worker),
                From = table.Opens(index).InZone(table.Zone),
                To = open.End.InZone(table.Zone),
                TakeOut = TakeOut.Of(steps, done, mixes, paints),
                Mixes = mixes,
                Tasks = done,
                Drying = isLastPainter ? nightly.DryingAt(lastEnd, end) : [],
                MasksOn = isLastPainter ? nightly.MasksAt(end) : [],
                Cautions = steps.SelectMany(step => step.Cautions).DistinctBy(caution => caution.Name).ToSequence(),
                AttendedMinutes = done.Sum(task => (int)(task.To - task.From).TotalMinutes),
                DayMinutes = OpenOn(open.Date),
                MostPerDayMinutes = MostPerDay(open.Date),
                Free = free.After(painters[p].Worker, painters[p].Work.Max(EndOf)),
            };
        }
    }

    private string Name(int worker) => table.Batch.Bench.Painters[worker].Name;

    // Who comes on a day comes to all its sittings. Of one under way counts what is left.
    private int OpenOn(LocalDate date) => Enumerable.Range(table.First, table.Posed.Sittings.Length - table.First)
        .Where(i => table.Posed.Sittings[i].Date == date).Sum(i => (int)(table.Posed.Sittings[i].End - table.Opens(i)).TotalMinutes);

    private int? MostPerDay(LocalDate date) =>
        table.Batch.Bench.MostPerDay is { } most && most.Minutes < table.Posed.Sittings.Where(sitting => sitting.Date == date).Sum(sitting => sitting.Minutes)
            ? (int)most.Minutes
            : null;
}
