using System.Collections.Immutable;
using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Small problems whose best plan is known for certain: every order is tried, or another solver is asked.</summary>
public class OptimumTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Clean_outs_that_depend_on_the_order_cost_as_little_as_in_the_best_of_all_orders(int seed)
    {
        var random = new Random(seed);
        var cleanOut = Enumerable.Range(0, 4).Select(i => Enumerable.Range(0, 4).Select(j => i == j ? 0L : random.Next(3, 30)).ToImmutableArray()).ToImmutableArray();
        var tool = new Tool("airbrush", 1, ["a", "b", "c", "d"], cleanOut, [2, 3, 4, 5], [0, 0, 0, 0]);
        var loads = Enumerable.Range(0, 7).Select(_ => random.Next(4)).ToArray();
        var problem = Problem(Worker((0, 10_000)), [.. loads.Select((load, i) => Task($"{i}", 10) with { Tool = new ToolUse(0, load) })]) with { Tools = [tool] };

        var best = Orders(7).Min(order =>
            tool.Fill[loads[order[0]]] + 70 + order.Zip(order.Skip(1)).Sum(pair => cleanOut[loads[pair.First]][loads[pair.Second]]));

        Plan(problem, Effort.Usual).Score.Finish.Should().Be(best);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Greatest_waits_are_kept_with_a_finish_as_early_as_in_the_best_of_all_orders(int seed)
    {
        var random = new Random(seed);
        var ticks = Enumerable.Range(0, 6).Select(_ => (long)random.Next(5, 30)).ToArray();
        // three pairs, each with a least and a greatest wait
        var waits = Enumerable.Range(0, 3).Select(p => After(2 * p, (2 * p) + 1, random.Next(5, 40), 45)).ToArray();
        var problem = Problem(Worker((0, 10_000)), [.. ticks.Select((t, i) => Task($"{i}", t))], waits);

        var best = Orders(6).Select(order => Finish(order, ticks, waits)).Min();

        Plan(problem, Effort.Thorough).Score.Finish.Should().Be(best!.Value);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Lots_that_cannot_be_parted_are_proved_best_just_where_no_order_is_better(int seed)
    {
        var random = new Random(seed);
        var lots = Enumerable.Range(0, 6).Select(i => Task($"{i}", random.Next(2, 7), units: 12, setUp: 3) with { MayBeParted = false }).ToArray();
        var problem = Problem(Worker([.. Enumerable.Range(0, 6).Select(d => (1440L * d, (1440L * d) + 100))]), lots) with { Aims = [Aim.FinishSoon] };

        // lot after lot, each in the evening before if there is room
        var best = Orders(6).Min(order => order.Aggregate(0L, (at, lot) =>
        {
            var ticks = lots[lot].SetUp + (12 * lots[lot].PerUnit);
            return (at % 1440) + ticks <= 100 ? at + ticks : (((at / 1440) + 1) * 1440) + ticks;
        }));

        var plan = Plan(problem);
        (plan.Score.Finish, plan.Bound.Finish).Should().Be((best, best));
    }

    [Theory]
    [InlineData(Effort.Quick, 500)]
    [InlineData(Effort.Usual, 100)]
    public void Another_solver_finds_no_better_plan_on_small_random_weeks(Effort effort, int weeks)
    {
        for (var seed = 0; seed < weeks; seed++)
            SecondOpinions.Disagreement(SecondOpinions.Week(seed), effort).Should().BeNull($"seed {seed}");
    }

    [Fact]
    public void Another_solver_finds_no_better_plan_on_five_hundred_small_sets_of_lots()
    {
        for (var seed = 0; seed < 500; seed++)
            SecondOpinions.Disagreement(SecondOpinions.Lots(seed), Effort.Quick).Should().BeNull($"seed {seed}");
    }

    [Fact]
    public void Another_solver_finds_no_better_plan_on_a_hundred_small_sets_of_lots_for_two_painters()
    {
        for (var seed = 0; seed < 100; seed++)
            SecondOpinions.Disagreement(SecondOpinions.Shared(seed), Effort.Quick).Should().BeNull($"seed {seed}");
    }

    [Fact]
    public void Another_solver_finds_no_better_plan_on_forty_small_racks()
    {
        for (var seed = 0; seed < 40; seed++)
            SecondOpinions.Disagreement(SecondOpinions.Racks(seed), Effort.Usual).Should().BeNull($"seed {seed}");
    }

    [Fact]
    public void With_other_aims_after_it_the_finish_is_still_in_the_best_sitting()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var problem = SecondOpinions.Week(seed) with { Aims = new Problem().Aims };
            if (SecondOpinions.Of(problem) is not { } second)
                continue;
            var finish = Plan(problem, Effort.Usual).Score.Finish;
            var open = problem.Workers[0].Open.Open;
            open.Count(o => o.Start < finish).Should().Be(open.Count(o => o.Start < second), $"seed {seed}");
        }
    }

    [Fact]
    public void A_clean_out_saved_is_worth_more_than_a_finish_that_is_sooner_in_the_same_sitting()
    {
        // black between the whites lets its long dry start sooner, but costs a second clean-out
        Activity[] activities = [
            Task("white", 10) with { Tool = new ToolUse(0, 1) },
            Task("black", 10, unattended: 70) with { Tool = new ToolUse(0, 0) },
            Task("white again", 10) with { Tool = new ToolUse(0, 1) },
        ];
        var problem = Problem(Worker((0, 100), (200, 300)), activities, After(0, 1)) with { Tools = [Airbrush(cleanOut: 6)] };

        Plan(problem).Schedule.Runs.Sum(r => r.CleanOut).Should().Be(6);
        Plan(problem).Score.Finish.Should().Be(106, "in the closed hours after the first sitting, as 96 would be in it");
        Plan(problem with { Workers = [new Worker("painter", new Calendar([new Interval(0, 1000)]))] })
            .Score.Finish.Should().Be(96, "hours in one stretch count every tick");
    }

    [Theory]
    [InlineData(350, 5, 40, 380, 5, 20, true)] // dry sooner after the last sitting, though the sittings are filled less evenly
    [InlineData(350, 7, 20, 380, 5, 20, false)] // but nobody cleans the airbrush once more for that
    [InlineData(250, 25, 20, 300, 5, 20, true)] // in a sitting a tick of clean-outs is worth a tick
    [InlineData(250, 75, 20, 300, 5, 20, false)]
    public void What_dries_after_the_last_sitting_tells_plans_with_the_same_clean_outs_apart(
        long finish, long changes, double unevenness, long otherFinish, long otherChanges, double otherUnevenness, bool isBetter)
    {
        var scoring = new Scoring(Problem(Worker((0, 100), (200, 300), (1000, 1100)), [Task("coat", 10)]), keep: null);

        Score Of(long at, long ticks, double uneven) => new(0, 0, at, ticks, 0, uneven, 0);
        (scoring.Compare(Of(finish, changes, unevenness), Of(otherFinish, otherChanges, otherUnevenness)) < 0).Should().Be(isBetter);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Clean_outs_and_greatest_waits_together_finish_as_early_as_in_the_best_of_all_orders(int seed)
    {
        var random = new Random(seed);
        var cleanOut = Enumerable.Range(0, 3).Select(i => Enumerable.Range(0, 3).Select(j => i == j ? 0L : random.Next(5, 25)).ToImmutableArray()).ToImmutableArray();
        var tool = new Tool("airbrush", 1, ["a", "b", "c"], cleanOut, [1, 2, 3], [0, 0, 0]);
        var loads = Enumerable.Range(0, 6).Select(_ => random.Next(3)).ToArray();
        var ticks = Enumerable.Range(0, 6).Select(_ => (long)random.Next(5, 20)).ToArray();
        Wait[] waits = [After(0, 1, random.Next(10, 40), 60), After(2, 3, random.Next(10, 40), 60)];
        var problem = Problem(Worker((0, 10_000)), [.. ticks.Select((t, i) => Task($"{i}", t) with { Tool = new ToolUse(0, loads[i]) })], waits)
            with
        { Tools = [tool], Aims = [Aim.FinishSoon] };

        var best = Orders(6).Min(order => Finish(order, ticks, waits, p => p == 0 ? tool.Fill[loads[order[0]]] : cleanOut[loads[order[p - 1]]][loads[order[p]]]));

        Plan(problem).Score.Finish.Should().Be(best!.Value);
    }

    // The earliest finish with the steps in this order, or null if the waits forbid it.
    private static long? Finish(int[] order, long[] ticks, Wait[] waits, Func<int, long>? cleanOut = null)
    {
        var start = new long[order.Length];
        start[order[0]] = cleanOut?.Invoke(0) ?? 0;
        for (var round = 0; round < 50; round++)
        {
            var before = start.ToArray();
            for (var p = 1; p < order.Length; p++)
                start[order[p]] = Math.Max(start[order[p]], start[order[p - 1]] + ticks[order[p - 1]] + (cleanOut?.Invoke(p) ?? 0));
            foreach (var wait in waits)
            {
                start[wait.To] = Math.Max(start[wait.To], start[wait.From] + ticks[wait.From] + wait.Least!.Value);
                start[wait.From] = Math.Max(start[wait.From], start[wait.To] - ticks[wait.From] - wait.Greatest!.Value);
            }

            if (before.AsSpan().SequenceEqual(start))
                return Enumerable.Range(0, start.Length).Max(i => start[i] + ticks[i]);
        }

        return null;
    }

    private static IEnumerable<int[]> Orders(int count)
    {
        if (count == 1)
            return [[0]];
        return Orders(count - 1).SelectMany(order => Enumerable.Range(0, count).Select(p => order[..p].Append(count - 1).Concat(order[p..]).ToArray()));
    }
}
