using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>From the exact solver's values to a schedule.</summary>
internal static class ExactSchedule
{
    public static Schedule Of(Net net, List<Piece>[] lots, ExactTools tools, CpSolver solver)
    {
        var numbers = tools.Numbers(solver);
        var runs = Enumerable.Range(0, net.Count).SelectMany(a => net[a].Past).ToList();
        foreach (var lot in lots)
        {
            var own = new List<Piece>();
            foreach (var piece in lot)
            {
                if (own.Count > 0 && BeginsRun(net, own[^1], piece, solver))
                {
                    runs.Add(Run(net, own, numbers, solver));
                    own.Clear();
                }

                own.Add(piece);
            }

            if (own.Count > 0)
                runs.Add(Run(net, own, numbers, solver));
        }

        runs.Sort((x, y) => x.Start != y.Start ? x.Start.CompareTo(y.Start)
            : x.Activity != y.Activity ? x.Activity.CompareTo(y.Activity) : x.FirstUnit.CompareTo(y.FirstUnit));
        var closes = tools.CloseDowns.Where(c => solver.BooleanValue(c.IsNeeded))
            .Select(c => new CloseDown(net.Tool[c.After.Activity], numbers[c.After], net.Load[c.After.Activity], c.After.Chosen(solver).Worker, solver.Value(c.Start), c.Ticks))
            .OrderBy(c => c.Start);
        return new Schedule([.. runs], [.. closes]);
    }

    private static bool BeginsRun(Net net, Piece before, Piece piece, CpSolver solver)
    {
        if (piece.Begins is { } begins)
            return solver.BooleanValue(begins);
        // where a new run costs nothing, whether one begins was not asked
        var a = piece.Activity;
        return solver.Value(piece.Start) != solver.Value(before.Start) + (before.Units * net.Step[a])
            || (net.Attended[a] && piece.Chosen(solver) != before.Chosen(solver));
    }

    private static Run Run(Net net, List<Piece> pieces, Dictionary<Piece, int> numbers, CpSolver solver)
    {
        var a = pieces[0].Activity;
        var cleanOut = solver.Value(pieces[0].CleanOut);
        var units = pieces.Sum(p => p.Units);
        return new Run(
            a,
            pieces[0].First,
            units,
            net.Attended[a] ? pieces[0].Chosen(solver).Worker : -1,
            net.Tool[a] < 0 ? -1 : numbers[pieces[0]],
            solver.Value(pieces[0].Start) - net[a].SetUp - cleanOut,
            cleanOut,
            net[a].SetUp,
            net.Work(a, units),
            net[a].PutAway);
    }
}
