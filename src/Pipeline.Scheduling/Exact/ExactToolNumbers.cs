using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>From the ways that the solver has tools alike go to the number of the one that each piece has.</summary>
internal sealed class ExactToolNumbers(Net net)
{
    private readonly List<(Piece Piece, int? Number, BoolVar Is)> firsts = [];
    private readonly Dictionary<Piece, List<(Piece Next, BoolVar Is)>> steps = [];

    /// <summary>A piece may come first with a tool: with one that is known, or with any that is clean.</summary>
    public void AddFirst(Piece piece, int? number, BoolVar isFirst) => firsts.Add((piece, number, isFirst));

    public void AddNext(Piece piece, Piece next, BoolVar comes)
    {
        if (!steps.TryGetValue(piece, out var nexts))
            steps[piece] = nexts = [];
        nexts.Add((next, comes));
    }

    public Dictionary<Piece, int> Read(CpSolver solver)
    {
        var numbers = new Dictionary<Piece, int>();
        foreach (var tool in firsts.GroupBy(f => net.Tool[f.Piece.Activity]))
        {
            var held = tool.Select(f => f.Number).OfType<int>().ToHashSet();
            var clean = Enumerable.Range(0, net.Problem.Tools[tool.Key].Count).Where(n => !held.Contains(n)).GetEnumerator();
            foreach (var (first, number, _) in tool.Where(f => solver.BooleanValue(f.Is)))
            {
                if (number is null)
                    clean.MoveNext();
                for (var piece = first; piece is not null; piece = Next(piece, solver))
                    numbers[piece] = number ?? clean.Current;
            }
        }

        return numbers;
    }

    private Piece? Next(Piece piece, CpSolver solver) =>
        steps.TryGetValue(piece, out var nexts) ? nexts.Where(n => solver.BooleanValue(n.Is)).Select(n => n.Next).FirstOrDefault() : null;
}
