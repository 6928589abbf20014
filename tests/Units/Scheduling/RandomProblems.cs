using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>Small random problems in which every kind of constraint occurs.</summary>
internal static class RandomProblems
{
    /// <summary>The same seed gives the same problem.</summary>
    public static Problem Next(int seed)
    {
        var random = new Random(seed);
        var workers = Enumerable.Range(0, random.Next(1, 4)).Select(w => Worker(random, w)).ToImmutableArray();
        var tools = Enumerable.Range(0, random.Next(0, 3)).Select(t => Tool(random, t)).ToImmutableArray();
        var places = Enumerable.Range(0, random.Next(0, 3)).Select(p => new Place($"place {p}", random.Next(3, 9))).ToImmutableArray();
        var activities = ImmutableArray.CreateBuilder<Activity>();
        var waits = ImmutableArray.CreateBuilder<Wait>();
        for (var chain = random.Next(1, 5); chain > 0; chain--)
            Chain(random, workers, tools, places, activities, waits);
        var count = activities.Count;
        for (var extra = random.Next(0, 3); extra > 0 && count > 1; extra--)
        {
            var from = random.Next(0, count - 1);
            waits.Add(new Wait(from, Edge.Finish, random.Next(from + 1, count), Edge.Start, random.Next(0, 40), null, Scope.WholeLot));
        }

        // so that the others stay as they were
        if (seed % 3 == 1 && places.Length > 0)
            GetWet(new Random(seed), places, activities, waits);
        if (random.Next(4) == 0)
            activities[0] = activities[0] with { PinnedStart = workers[0].Open.Open[1].Start + random.Next(0, 20) };
        if (random.Next(4) == 0)
            HappenedAlready(random, activities);
        var dues = Enumerable.Range(0, random.Next(0, 3))
            .Select(_ => new Due(random.Next(count), random.Next(200, 1500), random.Next(1, 4), random.Next(0, 10)));
        return new Problem
        {
            Workers = workers,
            Tools = tools,
            Places = places,
            Activities = activities.ToImmutable(),
            Waits = waits.ToImmutable(),
            Dues = [.. dues],
        };
    }

    private static Worker Worker(Random random, int w)
    {
        var open = new List<Interval>();
        long at = random.Next(0, 50);
        for (var i = 0; i < 60; i++)
        {
            var length = random.Next(60, 200);
            open.Add(new Interval(at, at + length));
            at += length + (random.Next(5) == 0 ? 0 : random.Next(20, 200));
        }

        int? most = random.Next(3) == 0 ? random.Next(60, 160) : null;
        return new Worker($"worker {w}", most is null ? new Calendar(open) : Days(new Random((most.Value * 31) + w), open), most);
    }

    // One, two or three intervals a day; or each a day of its own. Of another seed, so that the rest stays as it was.
    private static Calendar Days(Random random, List<Interval> open)
    {
        var most = random.Next(1, 4);
        var days = new List<List<Interval>>();
        for (var i = 0; i < open.Count; i += days[^1].Count)
            days.Add(open.GetRange(i, Math.Min(random.Next(1, most + 1), open.Count - i)));
        return Calendar.OfDays(days);
    }

    private static Tool Tool(Random random, int t)
    {
        var loads = random.Next(1, 4);
        var cleanOut = Enumerable.Range(0, loads)
            .Select(i => Enumerable.Range(0, loads).Select(j => i == j ? 0L : random.Next(0, 12)).ToImmutableArray()).ToImmutableArray();
        return new Tool(
            $"tool {t}",
            random.Next(1, 3),
            [.. Enumerable.Range(0, loads).Select(l => $"load {l}")],
            cleanOut,
            [.. Enumerable.Range(0, loads).Select(_ => (long)random.Next(0, 4))],
            [.. Enumerable.Range(0, loads).Select(_ => (long)random.Next(0, 9))]);
    }

    private static void Chain(
        Random random,
        ImmutableArray<Worker> workers,
        ImmutableArray<Tool> tools,
        ImmutableArray<Place> places,
        ImmutableArray<Activity>.Builder activities,
        ImmutableArray<Wait>.Builder waits)
    {
        var units = random.Next(1, 5);
        var length = random.Next(1, 6);
        for (var i = 0; i < length; i++)
        {
            var a = activities.Count;
            activities.Add(Activity(random, a, units, workers, tools, places));
            if (i == 0)
                continue;
            var least = random.Next(0, 60);
            var isGreatest = random.Next(4) == 0;
            waits.Add(new Wait(
                a - 1,
                random.Next(4) == 0 ? Edge.Start : Edge.Finish,
                a,
                random.Next(4) == 0 ? Edge.Finish : Edge.Start,
                least,
                isGreatest ? least + random.Next(60, 400) : null,
                random.Next(3) == 0 ? Scope.WholeLot : Scope.UnitByUnit,
                random.Next(3) == 0 ? 1 : 0));
        }
    }

    private static Activity Activity(
        Random random, int a, int units, ImmutableArray<Worker> workers, ImmutableArray<Tool> tools, ImmutableArray<Place> places)
    {
        var isAttended = random.Next(6) > 0;
        var use = isAttended && tools.Length > 0 && random.Next(3) == 0 ? random.Next(tools.Length) : -1;
        return new Activity
        {
            Name = $"activity {a}",
            Units = units,
            PerUnit = isAttended ? random.Next(1, 15) : 0,
            SetUp = isAttended && random.Next(2) == 0 ? random.Next(0, 6) : 0,
            PutAway = isAttended && random.Next(3) == 0 ? random.Next(0, 4) : 0,
            Unattended = random.Next(2) == 0 ? random.Next(0, 80) : 0,
            Together = random.Next(5) == 0,
            MayBeParted = random.Next(4) > 0,
            Workers = random.Next(3) == 0 ? [random.Next(workers.Length)] : [],
            Tool = use < 0 ? null : new ToolUse(use, random.Next(tools[use].Loads.Length)),
            Places = places.Length > 0 && random.Next(3) == 0 ? [new PlaceUse(random.Next(places.Length), random.Next(0, 2), random.Next(0, 30))] : [],
            NotBefore = random.Next(3) == 0 ? random.Next(0, 300) : 0,
        };
    }

    // Every chain is a model whose steps leave an area wet for long: its pieces stand in a place by several stays at once.
    private static void GetWet(Random random, ImmutableArray<Place> places, ImmutableArray<Activity>.Builder activities, ImmutableArray<Wait>.Builder waits)
    {
        var lot = 0;
        var amounts = new int[places.Length];
        for (var a = 0; a < activities.Count; a++)
        {
            if (a == 0 || !waits.Any(w => w.From == a - 1 && w.To == a))
            {
                lot++;
                for (var p = 0; p < places.Length; p++)
                    amounts[p] = random.Next(1, 3);
            }

            var uses = Enumerable.Range(0, places.Length).Where(_ => random.Next(2) == 0).Select(p => new PlaceUse(p, amounts[p], random.Next(0, 150)));
            activities[a] = activities[a] with { Lot = lot, Places = [.. uses] };
        }
    }

    // The first unit of some activity was done before everything else may start.
    private static void HappenedAlready(Random random, ImmutableArray<Activity>.Builder activities)
    {
        var a = activities[0];
        var units = a.Together || !a.MayBeParted ? a.Units : random.Next(1, a.Units + 1);
        var work = a.Together ? a.PerUnit : units * a.PerUnit;
        var run = new Run(0, 0, units, a.IsAttended ? (a.Workers.IsEmpty ? 0 : a.Workers[0]) : -1, a.Tool is null ? -1 : 0, -10, 0, a.SetUp, work, a.PutAway);
        activities[0] = a with { Past = [run], PinnedStart = null };
    }
}
