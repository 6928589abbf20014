using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>How sittings are filled: the parts by themselves, and the law that taking a filling up in the middle changes nothing.</summary>
public class FillingTests
{
    [Fact]
    public void The_knapsack_finds_what_trying_everything_finds()
    {
        for (var seed = 1; seed <= 200; seed++)
        {
            var random = new Random(seed);
            var lots = Enumerable.Range(0, 5).Select(_ => new Lot(random.Next(0, 8), random.Next(1, 20), random.Next(1, 5), random.Next(4) == 0, random.Next(1, 20) / 10.0)).ToArray();
            var gap = random.Next(1, 120);
            // in whole minutes of three ticks, say, nothing is lost by counting minutes
            var grain = 1 + (seed % 3);
            lots = [.. lots.Select(lot => lot with { SetUp = lot.SetUp * grain, PerUnit = lot.PerUnit * grain })];
            var knapsack = new Knapsack(grain);
            knapsack.Begin(gap);
            for (var i = 0; i < lots.Length; i++)
            {
                // what is taken back leaves no trace
                knapsack.Mark();
                knapsack.Add(99, setUp: grain, perUnit: grain, units: 3, isWhole: false, worthPerTick: 9);
                knapsack.BackToMark();
                knapsack.Add(i, lots[i].SetUp, lots[i].PerUnit, lots[i].Units, lots[i].IsWhole, lots[i].Worth);
            }

            var best = Best(lots, 0, gap);
            knapsack.WorthOf(gap).Should().BeApproximately(best, 0.001, $"seed {seed}");
            var chosen = new List<(int Key, int Units)>();
            knapsack.Choose(gap, chosen);
            chosen.Sum(c => Value(lots[c.Key], c.Units)).Should().BeApproximately(best, 0.001, $"seed {seed}");
            chosen.Sum(c => lots[c.Key].SetUp + (c.Units * lots[c.Key].PerUnit)).Should().BeLessThanOrEqualTo(gap);
        }
    }

    [Fact]
    public void The_next_sitting_with_room_is_the_one_that_looking_at_each_finds()
    {
        var random = new Random(1);
        foreach (var count in new[] { 0, 1, 2, 7, 16, 33 })
        {
            // two sittings a day, in every other day with a cap
            var days = Enumerable.Range(0, (count + 1) / 2).Select(d => new Workday(2 * d, Math.Min((2 * d) + 1, count - 1), d % 2 == 0 ? 90 : long.MaxValue)).ToArray();
            var sittings = Enumerable.Range(0, count).Select(d => new Sitting(new Interval(d * 100, (d * 100) + random.Next(1, 100)), days[d / 2])).ToArray();
            var used = new long[count];
            var room = new SittingRoom(sittings);
            for (var i = 0; i < 300; i++)
            {
                if (count > 0)
                {
                    var d = random.Next(count);
                    var most = sittings[d].End - sittings[d].Start;
                    sittings[d].Use(-used[d]);
                    used[d] = random.NextInt64(Math.Min(most, days[d / 2].Free) + 1);
                    sittings[d].Use(used[d]);
                    room.Changed(days[d / 2]);
                    sittings[d].Free.Should().Be(Math.Min(most - used[d], days[d / 2].Free));
                }

                var (from, ticks) = (random.Next(count + 1), random.Next(1, 100));
                var first = from;
                while (first < count && sittings[first].Free < ticks)
                    first++;
                room.Next(from, ticks).Should().Be(first);
            }
        }
    }

    [Fact]
    public void Filled_from_the_middle_it_is_as_filled_from_the_start_and_taken_back_as_it_was()
    {
        for (var seed = 1; seed <= 150; seed++)
        {
            if (Fillers(RandomProblems.Next(seed)) is not ({ } one, { } other, var keys, var components))
                continue;
            var random = new Random(seed);
            var filling = new Filling(keys, 0.2, 0.5, 0.3, Patience: 2, Joins: seed % 2 == 0);
            one.Fill(filling, 0);
            one.Keep();
            for (var change = 0; change < 5; change++)
            {
                var a = random.Next(keys.Length);
                var changed = (double[])filling.Keys.Clone();
                changed[a] = random.NextDouble() * keys.Max();
                var next = filling with { Keys = changed };
                var before = Runs(one.Table);
                var isWhole = one.Fill(next, one.FirstOf(components.Of[a]));
                other.Fill(next, 0).Should().Be(isWhole);
                Runs(one.Table).Should().Be(Runs(other.Table), $"seed {seed}, change {change}");
                if (random.Next(2) == 0)
                {
                    one.Keep();
                    filling = next;
                }
                else
                {
                    one.TakeBack();
                    one.Fill(filling, int.MaxValue);
                    Runs(one.Table).Should().Be(before, $"seed {seed}, change {change}");
                    one.Keep();
                }
            }
        }
    }

    [Fact]
    public void A_copied_timetable_has_the_same_runs_and_keeps_them()
    {
        for (var seed = 1; seed <= 50; seed++)
        {
            if (Fillers(RandomProblems.Next(seed)) is not ({ } filler, _, var keys, _) || !filler.Fill(new Filling(keys, 0.2, 0.5, 0.3, 2, Joins: true), 0))
                continue;
            var copy = filler.Table.Copy();
            Runs(copy).Should().Be(Runs(filler.Table));
            var (runs, schedule) = (Runs(copy), WriteDown.Of(copy));
            filler.Fill(new Filling(keys.Reverse().ToArray(), 0, 0, 1, 0, Joins: false), 0);
            Runs(copy).Should().Be(runs);
            filler.Fill(new Filling(keys, 0.2, 0.5, 0.3, 2, Joins: true), 0);
            schedule.Runs.Should().BeEquivalentTo(WriteDown.Of(filler.Table).Runs);
            WriteDown.Of(copy).CloseDowns.Should().Equal(WriteDown.Of(filler.Table).CloseDowns);
        }
    }

    [Fact]
    public void A_kept_lot_stays_parted_over_the_evenings_as_it_was()
    {
        // the first step takes longer now, the second was parted with no need
        Activity[] activities = [Task("trim", 12, units: 2), Task("paint", 10, units: 2), Task("glaze", 10)];
        var problem = Problem(Worker((0, 100), (1440, 1540), (2880, 2980)), activities, After(0, 1));
        Run Was(int activity, int first, int units, long start) => new(activity, first, units, Worker: 0, ToolNumber: -1, start, CleanOut: 0, SetUp: 0, Work: 0, PutAway: 0);
        var keep = new Keep(new Schedule([Was(0, 0, 2, 0), Was(1, 0, 1, 20), Was(1, 1, 1, 1440), Was(2, 0, 1, 1450)], []), TicksPerMovedRun: 50, Within: 10);
        Runs(KeptStarts.Of(problem, keep).First()).Should().Be("0.0x2@0+0:0/-1 1.0x1@24+0:0/-1 1.1x1@1440+0:0/-1 2.0x1@1450+0:0/-1");
    }

    [Fact]
    public void A_masked_lot_is_sprayed_at_one_go_though_masking_it_takes_two_evenings()
    {
        // three to a sitting when masking and unmasking; the mask may stay on three days
        Activity[] activities = [
            Task("mask", 30, units: 6),
            Task("spray", 5, units: 6, setUp: 5) with { Tool = new ToolUse(0, 0) },
            Task("unmask", 25, units: 6),
        ];
        Wait[] waits = [After(0, 1), After(1, 2, least: 30), After(0, 2, greatest: 3 * 1440)];
        var evenings = Enumerable.Range(0, 8).Select(d => (d * 1440L, (d * 1440L) + 100)).ToArray();
        var net = new Net(Problem(Worker(evenings), activities, waits) with { Tools = [Airbrush(cleanOut: 5, closeDown: 10)] });
        var components = new Components(net);
        var table = new Timetable(net);
        new TiedLots(net, components, Heads.Of(net, components, new Hours(net))).Put(table, new Fitting(table), components.Of[1]).Should().BeTrue();
        table.Runs.Should().ContainSingle(r => r.Activity == 1).Which.Units.Should().Be(6);
        table.Runs.Where(r => r.Activity == 0).Sum(r => r.Units).Should().Be(6);
        table.Runs.Where(r => r.Activity == 2).Sum(r => r.Units).Should().Be(6);
    }

    private static (SittingFiller? One, SittingFiller? Other, double[] Keys, Components Components)? Fillers(Problem problem)
    {
        var net = new Net(problem);
        var components = new Components(net);
        var heads = Heads.Of(net, components, new Hours(net));
        if (!Feasibility.Of(net).IsEmpty || heads.Obstacle is not null || !net.Attended.Contains(true))
            return null;
        var table = new Timetable(net);
        if (!new Dispatcher(net, components, heads).PutPinned(table, new Fitting(table)))
            return null;
        double[] keys = [.. Enumerable.Range(0, net.Count).Select(a => (double)heads.Starts[net.Offset[a]])];
        SittingFiller New() => new(net, components, new Dispatcher(net, components, heads), Math.Max(1, keys.Max()));
        return (New(), New(), keys, components);
    }

    private static string Runs(Timetable table) => string.Join(" ", table.Runs.Select(r => $"{r.Activity}.{r.First}x{r.Units}@{r.Start}+{r.CleanOut}:{r.Worker}/{r.ToolNumber}").Order(StringComparer.Ordinal));

    private sealed record Lot(long SetUp, long PerUnit, int Units, bool IsWhole, double Worth);

    private static double Value(Lot lot, int units) => lot.Worth * ((units * lot.PerUnit) + (units == lot.Units ? lot.SetUp : 0));

    private static double Best(Lot[] lots, int i, long gap)
    {
        if (i == lots.Length)
            return 0;
        var best = Best(lots, i + 1, gap);
        for (var n = lots[i].IsWhole ? lots[i].Units : 1; n <= lots[i].Units; n++)
        {
            if (lots[i].SetUp + (n * lots[i].PerUnit) is var ticks && ticks <= gap)
                best = Math.Max(best, Value(lots[i], n) + Best(lots, i + 1, gap - ticks));
        }

        return best;
    }
}
