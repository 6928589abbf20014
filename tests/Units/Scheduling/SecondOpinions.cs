using Google.OrTools.Sat;
using Google.OrTools.Util;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>
/// Small random problems and what a plain model of their own says of them. It shares nothing with the solver: every run that
/// could be is an optional interval, and each unit is in exactly one of them.
/// </summary>
internal static class SecondOpinions
{
    /// <summary>What the two disagree on, or null.</summary>
    public static string? Disagreement(Problem problem, Effort effort)
    {
        var second = Of(problem);
        return Solver.Solve(problem, effort, 1, progress: null, keep: null, threads: 1) switch
        {
            Outcome.Planned plan when plan.Score.Finish != second => $"finish {plan.Score.Finish} instead of {second}",
            Outcome.Planned plan when plan.Bound.Finish > second => $"bound {plan.Bound.Finish} above {second}",
            Outcome.Impossible when second is not null => $"no plan instead of {second}",
            _ => null,
        };
    }

    /// <summary>Seven steps, one pair of hands, short sittings, waits of both kinds.</summary>
    public static Problem Week(int seed)
    {
        var random = new Random(seed);
        var activities = Enumerable.Range(0, 7)
            .Select(i => new Activity { Name = $"{i}", PerUnit = random.Next(5, 40), Unattended = random.Next(3) * 20 }).ToArray();
        var waits = new List<Wait>();
        for (var i = 1; i < 7; i++)
        {
            if (random.Next(3) > 0)
                waits.Add(new Wait(random.Next(i), Edge.Finish, i, Edge.Start, random.Next(0, 60), random.Next(4) == 0 ? random.Next(120, 300) : null));
        }

        return new Problem { Workers = [Painter(random)], Activities = [.. activities], Waits = [.. waits], Aims = [Aim.FinishSoon] };
    }

    /// <summary>Two or three models of some units in two steps each, with set-up and putting away, parted or not, some together.</summary>
    public static Problem Lots(int seed)
    {
        var random = new Random(seed);
        var activities = new List<Activity>();
        var waits = new List<Wait>();
        for (var model = random.Next(2, 4); model > 0; model--)
        {
            var units = random.Next(1, 4);
            for (var step = 0; step < 2; step++)
            {
                activities.Add(new Activity
                {
                    Name = $"{activities.Count}",
                    Units = units,
                    PerUnit = random.Next(3, 13),
                    SetUp = random.Next(0, 6),
                    PutAway = random.Next(0, 3),
                    Unattended = random.Next(3) * 10,
                    Together = random.Next(6) == 0,
                    MayBeParted = random.Next(4) > 0,
                });
            }

            var least = random.Next(0, 50);
            var scope = random.Next(3) == 0 ? Scope.WholeLot : Scope.UnitByUnit;
            waits.Add(new Wait(activities.Count - 2, Edge.Finish, activities.Count - 1, Edge.Start, least, random.Next(3) == 0 ? least + random.Next(20, 150) : null, scope));
        }

        return new Problem { Workers = [Painter(random)], Activities = [.. activities], Waits = [.. waits], Aims = [Aim.FinishSoon] };
    }

    /// <summary>Two or three models of a piece or two, with areas that are painted in any order and dry in a rack of one to three.</summary>
    public static Problem Racks(int seed)
    {
        var random = new Random(seed);
        var activities = new List<Activity>();
        var waits = new List<Wait>();
        for (var model = random.Next(2, 4); model > 0; model--)
        {
            var units = random.Next(1, 3);
            var areas = random.Next(1, 4);
            for (var area = 0; area < areas; area++)
            {
                activities.Add(new Activity
                {
                    Name = $"{activities.Count}",
                    Lot = random.Next(5) == 0 ? null : model,
                    Units = units,
                    PerUnit = random.Next(3, 13),
                    SetUp = random.Next(3) == 0 ? random.Next(0, 6) : 0,
                    MayBeParted = random.Next(4) > 0,
                    Places = random.Next(5) == 0 ? [] : [new PlaceUse(0, 1, random.Next(10, 120))],
                });
                if (area > 0 && random.Next(3) == 0)
                    waits.Add(new Wait(activities.Count - 2, Edge.Finish, activities.Count - 1, Edge.Start, random.Next(0, 50), random.Next(4) == 0 ? 150 : null));
            }
        }

        return new Problem { Workers = [Painter(random)], Places = [new Place("rack", random.Next(1, 4))], Activities = [.. activities], Waits = [.. waits], Aims = [Aim.FinishSoon] };
    }

    /// <summary>The steps of a <see cref="Week"/>, or <see cref="Lots"/> of fewer, for two painters of different hours, who cannot do all the same.</summary>
    public static Problem Shared(int seed)
    {
        var random = new Random(seed);
        var problem = seed % 2 == 0 ? Week(seed) : Lots(seed);
        var friend = new Worker("friend", new Calendar(Enumerable.Range(0, 14).Where(_ => random.Next(3) > 0)
            .Select(d => new Interval((d * 100) + random.Next(0, 60), (d * 100) + random.Next(70, 99)))));
        return problem with
        {
            Workers = [problem.Workers[0], friend],
            Activities = [.. problem.Activities.Select(a => a with { Workers = random.Next(5) switch { 0 => [0], 1 => [1], _ => [] } })],
        };
    }

    /// <summary>The earliest finish of a problem without tools; null if there is no schedule.</summary>
    public static long? Of(Problem problem)
    {
        var model = new CpModel();
        var horizon = problem.Workers.Max(w => w.Open.Open[^1].End);
        var finish = model.NewIntVar(0, horizon + 1000, "finish");
        var starts = problem.Activities.Select((a, i) => Enumerable.Range(0, a.Units).Select(k => model.NewIntVar(0, horizon, $"s{i}_{k}")).ToArray()).ToArray();
        var hands = problem.Workers.Select(_ => new List<IntervalVar>()).ToArray();
        var onDays = problem.Workers.Select(w => w.Open.Day.Distinct().Select(_ => new List<LinearExpr>()).ToArray()).ToArray();
        for (var a = 0; a < starts.Length; a++)
        {
            AddRuns(model, problem, a, starts[a], hands, onDays);
            model.Add(finish >= starts[a][^1] + problem.Activities[a].PerUnit + problem.Activities[a].Unattended);
        }

        for (var w = 0; w < hands.Length; w++)
        {
            model.AddNoOverlap(hands[w]);
            foreach (var day in onDays[w].Where(_ => problem.Workers[w].MostPerDay is not null))
                model.Add(LinearExpr.Sum(day) <= problem.Workers[w].MostPerDay!.Value);
        }

        foreach (var wait in problem.Waits)
        {
            var (from, to) = (starts[wait.From], starts[wait.To]);
            var ticks = problem.Activities[wait.From].PerUnit + problem.Activities[wait.From].Unattended;
            for (var k = 0; k < from.Length; k++)
            {
                var whole = wait.Scope == Scope.WholeLot;
                model.Add(to[whole ? 0 : k] >= from[whole ? ^1 : k] + ticks + wait.Least!.Value);
                if (wait.Greatest is { } greatest)
                    model.Add(to[whole ? ^1 : k] <= from[whole ? 0 : k] + ticks + greatest);
            }
        }

        for (var p = 0; p < problem.Places.Length; p++)
            AddPlace(model, problem, p, starts);
        model.Minimize(finish);
        var solver = new CpSolver { StringParameters = "num_workers:1" };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => (long)solver.ObjectiveValue,
            CpSolverStatus.Infeasible => null,
            var other => throw new InvalidOperationException($"The second opinion ends {other}: {model.Validate()}"),
        };
    }

    // A place is fullest when something comes: at each coming, who is there? The piece that comes, and every other with a stay that runs.
    private static void AddPlace(CpModel model, Problem problem, int place, IntVar[][] starts)
    {
        var stays = starts.SelectMany((units, a) => problem.Activities[a].Places.Where(use => use.Place == place)
            .SelectMany(use => units.Select((start, k) => (
                Piece: problem.Activities[a].Lot is { } lot ? $"model {lot} piece {k}" : $"step {a} piece {k}",
                Start: start,
                Length: problem.Activities[a].PerUnit + problem.Activities[a].Unattended + use.Afterwards)))).ToArray();
        foreach (var coming in stays)
        {
            var there = new List<BoolVar>();
            foreach (var piece in stays.GroupBy(stay => stay.Piece).Where(piece => piece.Key != coming.Piece))
            {
                var isThere = model.NewBoolVar("there");
                there.Add(isThere);
                foreach (var stay in piece)
                {
                    // if it is not there, each of its stays is over or yet to come
                    var isOver = model.NewBoolVar("over");
                    model.Add(stay.Start + stay.Length <= coming.Start).OnlyEnforceIf(isOver);
                    model.Add(stay.Start > coming.Start).OnlyEnforceIf([isThere.Not(), isOver.Not()]);
                }
            }

            model.Add(LinearExpr.Sum(there) <= problem.Places[place].Capacity - 1);
        }
    }

    // Every run of neighbouring units by everybody who could do it, there or not.
    private static void AddRuns(CpModel model, Problem problem, int a, IntVar[] starts, List<IntervalVar>[] hands, List<LinearExpr>[][] onDays)
    {
        var activity = problem.Activities[a];
        var holding = starts.Select(_ => new List<ILiteral>()).ToArray();
        for (var first = 0; first < activity.Units; first++)
        {
            for (var units = 1; first + units <= activity.Units; units++)
            {
                if ((activity.Together || !activity.MayBeParted) && units < activity.Units)
                    continue;
                var work = activity.Together ? activity.PerUnit : units * activity.PerUnit;
                var ticks = activity.SetUp + work + activity.PutAway;
                for (var w = 0; w < hands.Length; w++)
                {
                    if (!activity.Workers.IsEmpty && !activity.Workers.Contains(w))
                        continue;
                    if (AddRun(model, problem.Workers[w], ticks, hands[w], onDays[w]) is not { } run)
                        continue;
                    for (var k = 0; k < units; k++)
                    {
                        model.Add(starts[first + k] == run.Start + activity.SetUp + (activity.Together ? 0 : k * activity.PerUnit)).OnlyEnforceIf(run.IsThere);
                        holding[first + k].Add(run.IsThere);
                    }
                }
            }
        }

        foreach (var runs in holding)
            model.AddExactlyOne(runs);
        for (var k = 1; k < starts.Length; k++)
            model.Add(starts[k] >= starts[k - 1] + (activity.Together ? 0 : activity.PerUnit));
    }

    private static (IntVar Start, BoolVar IsThere)? AddRun(CpModel model, Worker worker, long ticks, List<IntervalVar> hands, List<LinearExpr>[] onDays)
    {
        var rooms = worker.Open.Open.Zip(worker.Open.Day).Where(o => o.First.Length >= ticks).Select(o => (Room: new[] { o.First.Start, o.First.End - ticks }, Day: o.Second)).ToArray();
        if (rooms.Length == 0)
            return null;
        var start = model.NewIntVarFromDomain(Domain.FromIntervals([.. rooms.Select(room => room.Room)]), "run");
        var isThere = model.NewBoolVar("is there");
        hands.Add(model.NewOptionalFixedSizeIntervalVar(start, ticks, isThere, "hands"));
        if (worker.MostPerDay is not null)
            AddOnDays(model, start, isThere, ticks, [.. rooms.GroupBy(room => room.Day, room => room.Room)], onDays);
        return (start, isThere);
    }

    // A run that is there is there on one of the days.
    private static void AddOnDays(CpModel model, IntVar start, BoolVar isThere, long ticks, IGrouping<int, long[]>[] rooms, List<LinearExpr>[] onDays)
    {
        var days = new List<ILiteral> { isThere.Not() };
        foreach (var day in rooms)
        {
            var isOn = model.NewBoolVar("day");
            days.Add(isOn);
            onDays[day.Key].Add(isOn * ticks);
            model.AddLinearExpressionInDomain(start, Domain.FromIntervals([.. day])).OnlyEnforceIf(isOn);
        }

        model.AddExactlyOne(days);
    }

    private static Worker Painter(Random random) =>
        new("painter", new Calendar(Enumerable.Range(0, 14).Select(d => new Interval(d * 100, (d * 100) + random.Next(40, 80)))));
}
