using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>The pieces of the search for projects without hands, each alone.</summary>
public class ProjectTests
{
    private const int Seeds = 60;

    [Theory]
    [InlineData(3)]
    [InlineData(40)]
    public void The_earliest_room_is_the_one_found_by_looking_at_every_tick(int places)
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest: false, places);
            var room = new Room(tasks);
            var random = new Random(seed);
            var starts = new Dictionary<int, long>();
            foreach (var i in Enumerable.Range(0, tasks.Count))
            {
                long from = random.Next(20);
                var start = room.Earliest(i, from);
                start.Should().Be(from + Enumerable.Range(0, 10_000).First(later => Fits(tasks, starts, i, from + later)), $"seed {seed}, task {i}");
                room.Take(i, start);
                starts[i] = start;
                if (random.Next(3) > 0)
                    continue;
                var gone = starts.Keys.ElementAt(random.Next(starts.Count));
                room.GiveBack(gone, starts[gone]);
                starts.Remove(gone);
            }

            room.Clear();
            room.Earliest(0, 0).Should().Be(0);
        }
    }

    [Fact]
    public void Longest_ways_are_no_shorter_than_any_detour_and_the_same_seen_from_the_end()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest: true);
            var ways = new LongestWays(tasks);
            tasks.Arcs.Should().OnlyContain(arc => ways.From[arc.From][arc.To] >= arc.Lag);
            for (var i = 0; i < tasks.Count; i++)
            {
                ways.From[i][i].Should().Be(0);
                for (var j = 0; j < tasks.Count; j++)
                {
                    ways.To[j][i].Should().Be(ways.From[i][j]);
                    var detours = Enumerable.Range(0, tasks.Count).Where(k => ways.From[i][k] > LongestWays.None && ways.From[k][j] > LongestWays.None);
                    ways.From[i][j].Should().Be(detours.Select(k => ways.From[i][k] + ways.From[k][j]).DefaultIfEmpty(LongestWays.None).Max());
                }
            }

            ways.Mirrored().Mirrored().From.Should().BeEquivalentTo(ways.From, o => o.WithStrictOrdering());
        }
    }

    [Fact]
    public void A_drawn_list_keeps_the_order_of_its_tasks_and_so_does_every_list_made_of_two()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest: seed % 2 == 0);
            var order = Order(tasks, out var scheme);
            var random = new Random(seed);
            var ironing = new Ironing(tasks, order, scheme);
            var crossing = new Crossing(tasks, order, random);
            var herd = Enumerable.Range(0, 20).Select(_ => ironing.Of(order.Sample(random))).OfType<Member>().ToList();
            foreach (var mother in herd)
            {
                var child = crossing.Cross(mother, herd[random.Next(herd.Count)]);
                crossing.Mutate(child);
                child.Order().Should().Equal(Enumerable.Range(0, tasks.Count));
                var turned = Enumerable.Range(0, child.Length).Where(p => child.Skip(p + 1).Any(later => order.IsBefore(later, child[p])));
                turned.Should().BeEmpty($"seed {seed}");
            }
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Whatever_the_list_its_schedule_keeps_waits_and_places(bool greatest)
    {
        var made = 0;
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest);
            var order = Order(tasks, out var scheme);
            var random = new Random(seed);
            for (var turn = 0; turn < 10; turn++)
            {
                var list = order.Sample(random);
                var starts = new long[tasks.Count];
                if (scheme.Forward(list, starts) is not { } finish)
                    continue;
                made++;
                finish.Should().Be(tasks.Finish(starts));
                Auditor.Audit(tasks.Net.Problem, WriteDown.Of(tasks.ToTimetable(starts))).Should().BeEmpty($"seed {seed}");
                var ironed = new Ironing(tasks, order, scheme).Of(list)!;
                ironed.Finish.Should().BeLessThanOrEqualTo(finish).And.Be(tasks.Finish(ironed.Starts));
                Auditor.Audit(tasks.Net.Problem, WriteDown.Of(tasks.ToTimetable(ironed.Starts))).Should().BeEmpty($"seed {seed}, ironed");
            }
        }

        made.Should().BeGreaterThan(10 * Seeds / 4);
    }

    [Fact]
    public void A_herd_that_agrees_makes_way_for_a_larger_one_without_losing_its_best()
    {
        const int size = 20;
        for (var seed = 0; seed < 5; seed++)
        {
            var tasks = Project(seed, greatest: false, count: 30);
            var order = Order(tasks, out var scheme);
            var herd = new Breeding(tasks, order, scheme, size, seed);
            var largest = 0;
            for (var turn = 0; turn < 100; turn++)
            {
                var before = herd.Best?.Finish ?? long.MaxValue;
                herd.Run(100_000, bound: 0, CancellationToken.None);
                herd.Best!.Finish.Should().BeLessThanOrEqualTo(before).And.BeLessThanOrEqualTo(herd.Members.Select(m => m.Finish).DefaultIfEmpty(long.MaxValue).Min());
                herd.Members.Select(m => string.Join(' ', m.Starts)).Should().OnlyHaveUniqueItems($"seed {seed}");
                largest = Math.Max(largest, herd.Members.Count);
            }

            largest.Should().BeGreaterThan(size, $"seed {seed}");
            Auditor.Audit(tasks.Net.Problem, WriteDown.Of(tasks.ToTimetable(herd.Best!.Starts))).Should().BeEmpty($"seed {seed}");
        }
    }

    [Fact]
    public void A_schedule_that_a_herd_is_given_is_its_best_if_there_is_no_better()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest: false);
            var order = Order(tasks, out var scheme);
            var other = new Breeding(tasks, order, scheme, size: 20, seed);
            other.Run(200_000, bound: 0, CancellationToken.None);
            var herd = new Breeding(tasks, order, scheme, size: 1, seed + 1);
            herd.Run(1, bound: 0, CancellationToken.None);
            var own = herd.Best!.Finish;
            herd.Welcome(other.Best!.Starts);
            herd.Best!.Finish.Should().Be(Math.Min(own, other.Best!.Finish), $"seed {seed}");
        }
    }

    [Fact]
    public void The_exact_solver_finds_nothing_better_than_the_search_of_a_small_project()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var tasks = Project(seed, greatest: seed % 2 == 0, count: 9);
            var exact = ExactProject.Solve(tasks, hint: null, lowerBound: 0, budget: 100, "num_workers:1", seed: 1, CancellationToken.None);
            switch (Solver.Solve(tasks.Net.Problem, Effort.Quick))
            {
                case Outcome.Planned plan:
                    plan.Score.Finish.Should().Be(tasks.Finish(exact.Starts!), $"seed {seed}");
                    break;
                default:
                    exact.IsImpossible.Should().BeTrue($"seed {seed}");
                    break;
            }
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void One_thread_or_two_make_the_same_schedule_of_a_project(bool greatest)
    {
        var problem = Project(3, greatest, count: 40).Net.Problem;

        var one = (Outcome.Planned)Solver.Solve(problem, Effort.Quick, 1, progress: null, keep: null, threads: 1);
        var two = (Outcome.Planned)Solver.Solve(problem, Effort.Quick, 1, progress: null, keep: null, threads: 2);

        two.Schedule.Runs.Should().Equal(one.Schedule.Runs);
    }

    private static TaskOrder Order(Tasks tasks, out IListScheme scheme)
    {
        var ways = tasks.AreListable ? null : new LongestWays(tasks);
        scheme = ways is null ? new ListSchedule(tasks) : new LagSchedule(tasks, ways);
        return new TaskOrder(tasks, ways);
    }

    private static bool Fits(Tasks tasks, Dictionary<int, long> starts, int task, long start)
    {
        for (var t = start; t < start + tasks.Duration[task]; t++)
        {
            for (var r = 0; r < tasks.Capacity.Length; r++)
            {
                var taken = starts.Where(s => s.Value <= t && t < s.Value + tasks.Duration[s.Key]).Sum(s => tasks.Demand[s.Key][r]);
                if (tasks.Demand[task][r] > 0 && taken + tasks.Demand[task][r] > tasks.Capacity[r])
                    return false;
            }
        }

        return true;
    }

    // Tasks that wait for one or two before them, some of them not too long if that is asked for.
    private static Tasks Project(int seed, bool greatest, int places = 2, int count = 14)
    {
        var random = new Random(seed);
        var activities = Enumerable.Range(0, count).Select(i => new Activity
        {
            Name = $"{i}",
            Unattended = random.Next(0, 8),
            Places = [.. Enumerable.Range(0, places).Where(_ => random.Next(2) == 0).Select(r => new PlaceUse(r, random.Next(1, 5), 0))],
        }).ToImmutableArray();
        var waits = new List<Wait>();
        for (var i = 1; i < count; i++)
        {
            for (var k = random.Next(3); k > 0; k--)
            {
                var most = greatest && random.Next(3) == 0 ? random.Next(3, 12) : (long?)null;
                waits.Add(greatest
                    ? new Wait(random.Next(i), Edge.Start, i, Edge.Start, random.Next(0, 4), most)
                    : new Wait(random.Next(i), Edge.Finish, i, Edge.Start, 0, null));
            }
        }

        // greatest waits that contradict the least ones on a longer way are drawn anew
        var net = new Net(new Problem
        {
            Places = [.. Enumerable.Range(0, places).Select(r => new Place($"place {r}", 5 + (r % 3)))],
            Activities = activities,
            Waits = [.. waits],
        });
        return Heads.Of(net, new Components(net), hours: null).Obstacle is null ? Tasks.In(net)! : Project(seed + 10_000, greatest, places, count);
    }
}
