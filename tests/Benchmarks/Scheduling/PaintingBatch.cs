using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>
/// Generates batches as a painter has them, in minutes: models of 12 to 40 steps on 1 to 5 areas, 2 to 10 units,
/// a quarter to a third of the steps sprayed from a handful of loads, enamel steps with 10 to 45 minutes to work
/// and 12 to 24 hours to dry, masks that stay on 24 to 72 hours at most.
/// </summary>
internal sealed class PaintingBatch
{
    private readonly Random random;
    private readonly List<Activity> activities = [];
    private readonly List<Wait> waits = [];
    private readonly int loads;
    private int models;

    private PaintingBatch(int seed)
    {
        random = new Random(seed);
        loads = random.Next(4, 8);
    }

    /// <summary>A batch of about so many lot-steps; the same seed gives the same batch.</summary>
    public static Problem Of(int lotSteps, int seed)
    {
        var batch = new PaintingBatch(seed);
        while (batch.activities.Count < lotSteps)
            batch.Model(Math.Max(2, lotSteps - batch.activities.Count));
        var attended = batch.activities.Sum(a => a.SetUp + (a.Units * a.PerUnit));
        return new Problem
        {
            Workers = [new Worker("painter", batch.Week(seed % 4, 4 * attended))],
            Tools = [batch.Airbrush()],
            Activities = [.. batch.activities],
            Waits = [.. batch.waits],
        };
    }

    /// <summary>The same with a rack of so many places, in which every sprayed piece dries for an hour.</summary>
    public static Problem WithRack(Problem batch, int places) => batch with
    {
        Places = [new Place("rack", places)],
        Activities = [.. batch.Activities.Select(a => a.Tool is null ? a : a with { Places = [new PlaceUse(0, 1, 60)] })],
    };

    /// <summary>The same with an airbrush that is put away without being cleaned, so that only changes of its load cost anything.</summary>
    public static Problem WithoutCloseDowns(Problem batch) => batch with
    {
        Tools = [.. batch.Tools.Select(t => t with { CloseDown = [.. t.CloseDown.Select(_ => 0L)] })],
    };

    private void Model(int mostSteps)
    {
        models++;
        var units = random.Next(2, 11);
        var areas = random.Next(1, 6);
        var last = new (int Step, int DryMinutes)[areas];
        Array.Fill(last, (-1, 0));
        var sprayed = random.Next(25, 34);
        var steps = Math.Min(random.Next(12, 41), mostSteps);
        for (var s = 0; s < steps;)
        {
            var area = random.Next(areas);
            int[] touched = random.Next(5) == 0 ? [.. Enumerable.Range(0, areas)] : [area];
            var kind = random.Next(100);
            if (kind < 6 && s + 2 <= steps)
            {
                // an enamel wash, and cleaning it back while it can still be worked
                var wash = Step(units, touched, last, isSprayed: false, dryMinutes: 0);
                var back = Step(units, touched, last, isSprayed: false, dryMinutes: 60 * random.Next(12, 25));
                waits.Add(new Wait(wash, Edge.Finish, back, Edge.Start, 10, 45));
                s += 2;
            }
            else if (kind < 12 && s + 4 <= steps)
            {
                var mask = Step(units, touched, last, isSprayed: false, dryMinutes: 0);
                for (var coat = random.Next(1, 3); coat > 0; coat--, s++)
                    Step(units, touched, last, isSprayed: true, dryMinutes: random.Next(20, 90));
                var unmask = Step(units, touched, last, isSprayed: false, dryMinutes: 0);
                waits.Add(new Wait(mask, Edge.Finish, unmask, Edge.Start, null, 60 * random.Next(24, 73), HoldWeight: 1));
                s += 2;
            }
            else
            {
                var isSprayed = random.Next(100) < sprayed;
                Step(units, touched, last, isSprayed, isSprayed ? random.Next(20, 120) : random.Next(5, 60));
                s++;
            }
        }
    }

    private int Step(int units, int[] touched, (int Step, int DryMinutes)[] last, bool isSprayed, int dryMinutes)
    {
        var step = activities.Count;
        activities.Add(new Activity
        {
            Name = $"step {step}",
            Lot = models,
            Units = units,
            PerUnit = isSprayed ? random.Next(1, 6) : random.Next(2, 16),
            SetUp = isSprayed ? random.Next(3, 7) : random.Next(1, 6),
            Tool = isSprayed ? new ToolUse(0, random.Next(loads)) : null,
        });
        foreach (var (before, dry) in touched.Select(area => last[area]).Where(l => l.Step >= 0).Distinct())
            waits.Add(new Wait(before, Edge.Finish, step, Edge.Start, dry, null));
        foreach (var area in touched)
            last[area] = (step, dryMinutes);
        return step;
    }

    private Tool Airbrush() => new(
        "airbrush",
        1,
        [.. Enumerable.Range(0, loads).Select(l => $"load {l}")],
        [.. Enumerable.Range(0, loads).Select(i => Enumerable.Range(0, loads).Select(j => i == j ? 0L : random.Next(3, 13)).ToImmutableArray())],
        [.. Enumerable.Repeat(1L, loads)],
        [.. Enumerable.Range(0, loads).Select(_ => (long)random.Next(8, 13))]);

    // Four kinds of week: evenings and a long Saturday; short evenings every day; weekends only; evenings with a break.
    private Calendar Week(int kind, long minutes)
    {
        var open = new List<Interval>();
        long sum = 0;
        for (var day = 0; sum < minutes || day < 60; day++)
        {
            var weekday = day % 7;
            (int From, int To)[] sittings = kind switch
            {
                0 => weekday < 5 ? [(19 * 60, 22 * 60)] : weekday == 5 ? [(10 * 60, 17 * 60)] : [],
                1 => [(20 * 60, 22 * 60)],
                2 => weekday >= 5 ? [(9 * 60, 12 * 60), (14 * 60, 18 * 60)] : weekday == 2 ? [(19 * 60, 21 * 60)] : [],
                _ => weekday is 0 or 2 or 4 ? [(18 * 60, 19 * 60 + 30), (20 * 60, 22 * 60)] : [(20 * 60, 22 * 60)],
            };
            foreach (var (from, to) in sittings)
            {
                open.Add(new Interval((day * 1440L) + from, (day * 1440L) + to));
                sum += to - from;
            }
        }

        return new Calendar(open);
    }
}
