using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Counted tick by tick, a place is as full as the step function says, whatever was put in and taken out.</summary>
public class OccupancyTests
{
    private const int Ticks = 60;

    [Fact]
    public void The_earliest_fit_is_the_first_tick_at_which_no_tick_is_too_full()
    {
        var late = 0;
        for (var seed = 0; seed < 3000; seed++)
        {
            var random = new Random(seed);
            var problem = Wet(random);
            var net = new Net(problem);
            var occupancy = new Occupancy(net);
            var there = new List<(int Activity, int First, int Units, long Start)>();
            for (var i = random.Next(8); i > 0; i--)
            {
                var run = Run(random, problem, there);
                occupancy.Add(run.Activity, run.First, run.Units, run.Start);
                there.Add(run);
            }

            while (there.Count > 0 && random.Next(3) == 0)
            {
                var gone = there[random.Next(there.Count)];
                there.Remove(gone);
                occupancy.Remove(gone.Activity, gone.First, gone.Units, gone.Start);
            }

            var next = Run(random, problem, there);
            var first = Enumerable.Range((int)next.Start, 300).Select(start => (long?)start)
                .FirstOrDefault(start => Fits(problem, there, next with { Start = start!.Value })) ?? long.MaxValue;

            occupancy.EarliestFit(next.Activity, next.First, next.Units, next.Start).Should().Be(first, $"seed {seed}");
            late += first > next.Start && first < long.MaxValue ? 1 : 0;
            if (net.HasStays)
                (occupancy.Overfilled(next.Activity, next.First, next.Units, next.Start) is null).Should().Be(first == next.Start, $"seed {seed}");
        }

        late.Should().BeGreaterThan(300);
    }

    private static Problem Wet(Random random)
    {
        int[] amounts = [random.Next(1, 3), random.Next(1, 3)];
        return Problem(Worker((0, 1000)), [.. Enumerable.Range(0, 5).Select(i => Task($"{i}", random.Next(0, 6), units: 4, unattended: random.Next(6)) with
        {
            Lot = i < 2 ? 0 : i < 4 ? 1 : null,
            Together = random.Next(4) == 0,
            Places = [new PlaceUse(0, i < 4 ? amounts[i / 2] : 1, random.Next(30))],
        })]) with
        { Places = [new Place("rack", random.Next(2, 12))] };
    }

    // Some units that the activity has not had yet.
    private static (int Activity, int First, int Units, long Start) Run(Random random, Problem problem, List<(int Activity, int First, int Units, long Start)> there)
    {
        while (true)
        {
            var (activity, first) = (random.Next(problem.Activities.Length), random.Next(4));
            var units = random.Next(1, 5 - first);
            if (!there.Exists(run => run.Activity == activity && run.First < first + units && first < run.First + run.Units))
                return (activity, first, units, random.Next(Ticks));
        }
    }

    // What it adds to must not be too much at any tick; what it adds nothing to may be.
    private static bool Fits(Problem problem, List<(int Activity, int First, int Units, long Start)> there, (int Activity, int First, int Units, long Start) next)
    {
        for (var tick = next.Start; tick < next.Start + 100; tick++)
        {
            var before = there.SelectMany(run => Pieces(problem, run, tick)).ToHashSet();
            var added = Pieces(problem, next, tick).Where(piece => !before.Contains(piece)).ToList();
            if (added.Count > 0 && before.Concat(added).Sum(piece => piece.Amount) > problem.Places[0].Capacity)
                return false;
        }

        return true;
    }

    private static IEnumerable<(string Piece, int Amount)> Pieces(Problem problem, (int Activity, int First, int Units, long Start) run, long tick)
    {
        var activity = problem.Activities[run.Activity];
        for (var k = 0; k < run.Units; k++)
        {
            var start = run.Start + (activity.Together ? 0 : k * activity.PerUnit);
            if (start <= tick && tick < start + activity.PerUnit + activity.Unattended + activity.Places[0].Afterwards)
                yield return (activity.Lot is { } lot ? $"lot {lot} unit {run.First + k}" : $"activity {run.Activity} unit {run.First + k}", activity.Places[0].PerUnit);
        }
    }
}
