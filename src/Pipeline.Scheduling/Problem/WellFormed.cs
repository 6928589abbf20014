namespace Pipeline.Scheduling;

/// <summary>Refuses a problem that its caller put together wrongly. A problem without a schedule is not malformed.</summary>
internal static class WellFormed
{
    // So far from overflow that sums of a few thousand of them cannot reach it.
    private const long MostTicks = 1L << 48;

    public static void Check(Problem problem)
    {
        for (var w = 0; w < problem.Workers.Length; w++)
        {
            Require(problem.Workers[w].MostPerDay is null or >= 0, $"Worker {w} has a negative cap.");
            foreach (var open in problem.Workers[w].Open.Open)
                Require(Math.Abs(open.Start) <= MostTicks && Math.Abs(open.End) <= MostTicks, $"Worker {w} has an interval out of range.");
        }

        for (var t = 0; t < problem.Tools.Length; t++)
            CheckTool(problem.Tools[t], t);
        for (var p = 0; p < problem.Places.Length; p++)
            Require(problem.Places[p].Capacity >= 0, $"Place {p} has a negative capacity.");
        for (var a = 0; a < problem.Activities.Length; a++)
            CheckActivity(problem, a);
        CheckLots(problem);
        for (var w = 0; w < problem.Waits.Length; w++)
            CheckWait(problem, w);
        for (var d = 0; d < problem.Dues.Length; d++)
        {
            var due = problem.Dues[d];
            Require(InRange(due.Activity, problem.Activities.Length), $"Due {d} names no activity.");
            Require(due.WeightPerTick >= 0 && double.IsFinite(due.WeightPerTick), $"Due {d} has a weight that is not a number of zero or more.");
            Require(Math.Abs(due.By) <= MostTicks && Math.Abs(due.Afterwards) <= MostTicks, $"Due {d} is out of range.");
        }

        Require(problem.Aims.Distinct().Count() == problem.Aims.Length, "An aim is named twice.");
    }

    /// <summary>The same for what is to be kept of an earlier schedule.</summary>
    public static void Check(Problem problem, Keep keep)
    {
        Require(keep.TicksPerMovedRun >= 0 && double.IsFinite(keep.TicksPerMovedRun), "What a moved run is worth is not a number of zero or more.");
        Require(Ticks(keep.Within), "How far a run may move for less is out of range.");
        foreach (var run in keep.Earlier.Runs)
        {
            Require(InRange(run.Activity, problem.Activities.Length), "A run to be kept names no activity.");
            Require(run.FirstUnit >= 0 && run.Units >= 1 && Math.Abs(run.Start) <= MostTicks, $"A run of activity {run.Activity} to be kept has units or a start out of range.");
        }
    }

    private static void CheckTool(Tool tool, int t)
    {
        var loads = tool.Loads.Length;
        Require(tool.Count >= 1, $"Tool {t} has a count below one.");
        Require(tool.CleanOut.Length == loads && tool.CleanOut.All(row => row.Length == loads), $"Tool {t}: clean-outs are not one per pair of loads.");
        Require(tool.Fill.Length == loads && tool.CloseDown.Length == loads, $"Tool {t}: fills and close-downs are not one per load.");
        Require(tool.CleanOut.All(row => row.All(Ticks)) && tool.Fill.All(Ticks) && tool.CloseDown.All(Ticks), $"Tool {t} has a time out of range.");
        for (var i = 0; i < loads; i++)
            Require(tool.CleanOut[i][i] == 0, $"Tool {t}: staying with load {i} must cost nothing.");
    }

    private static void CheckActivity(Problem problem, int a)
    {
        var activity = problem.Activities[a];
        Require(activity.Units >= 1, $"Activity {a} has no units.");
        Require(
            Ticks(activity.PerUnit) && Ticks(activity.SetUp) && Ticks(activity.PutAway) && Ticks(activity.Unattended)
            && Math.Abs(activity.NotBefore) <= MostTicks && Math.Abs(activity.PinnedStart ?? 0) <= MostTicks,
            $"Activity {a} has a time out of range.");
        Require(activity.Workers.All(w => InRange(w, problem.Workers.Length)), $"Activity {a} names no worker.");
        if (activity.Tool is { } use)
        {
            Require(InRange(use.Tool, problem.Tools.Length), $"Activity {a} names no tool.");
            Require(InRange(use.Load, problem.Tools[use.Tool].Loads.Length), $"Activity {a} names no load.");
        }

        foreach (var place in activity.Places)
        {
            Require(InRange(place.Place, problem.Places.Length), $"Activity {a} names no place.");
            Require(place.PerUnit >= 0 && Ticks(place.Afterwards), $"Activity {a} uses a place by a negative amount or time.");
        }

        Require(activity.Places.Select(place => place.Place).Distinct().Count() == activity.Places.Length, $"Activity {a} names a place twice.");
        Require(!activity.IsAttended || problem.Workers.Length > 0, $"Activity {a} needs hands and there are no workers.");
        var unit = 0;
        foreach (var run in activity.Past)
        {
            Require(run.Activity == a && run.FirstUnit == unit && run.Units >= 1, $"Activity {a}: past runs are not in unit order from unit 0.");
            Require(InRange(run.Worker, problem.Workers.Length) || run.Worker == -1, $"Activity {a}: a past run names no worker.");
            Require(activity.Tool is null || InRange(run.ToolNumber, problem.Tools[activity.Tool.Tool].Count), $"Activity {a}: a past run names no tool.");
            unit += run.Units;
        }

        Require(unit <= activity.Units, $"Activity {a}: more units are done than there are.");
    }

    // A piece is as large whichever of its areas is wet.
    private static void CheckLots(Problem problem)
    {
        var amounts = new Dictionary<(int Lot, int Place), int>();
        foreach (var activity in problem.Activities)
        {
            foreach (var use in activity.Places.Where(use => use.PerUnit > 0))
            {
                if (activity.Lot is { } lot && !amounts.TryAdd((lot, use.Place), use.PerUnit))
                    Require(amounts[(lot, use.Place)] == use.PerUnit, $"Lot {lot} uses place {use.Place} by different amounts.");
            }
        }
    }

    private static void CheckWait(Problem problem, int w)
    {
        var wait = problem.Waits[w];
        Require(InRange(wait.From, problem.Activities.Length) && InRange(wait.To, problem.Activities.Length), $"Wait {w} names no activity.");
        Require(
            wait.Scope == Scope.WholeLot || problem.Activities[wait.From].Units == problem.Activities[wait.To].Units,
            $"Wait {w} holds unit by unit between lots of different size.");
        Require(Math.Abs(wait.Least ?? 0) <= MostTicks && Math.Abs(wait.Greatest ?? 0) <= MostTicks, $"Wait {w} is out of range.");
        Require(wait.HoldWeight >= 0 && double.IsFinite(wait.HoldWeight), $"Wait {w} has a hold weight that is not a number of zero or more.");
    }

    private static bool InRange(int index, int count) => index >= 0 && index < count;

    private static bool Ticks(long ticks) => ticks is >= 0 and <= MostTicks;

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
            throw new ArgumentException(otherwise);
    }
}
