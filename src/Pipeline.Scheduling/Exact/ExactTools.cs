using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>A close-down that may be needed after a piece.</summary>
internal sealed record ExactCloseDown(Piece After, BoolVar IsNeeded, IntVar Start, long Ticks, IntervalVar Interval);

/// <summary>
/// The tools of the exact model: each goes from piece to piece in one round trip. The next piece is in the same open interval,
/// after a clean-out from one load to the other, or in a later one, after a close-down and a fill.
/// </summary>
internal sealed class ExactTools(CpModel model, Net net)
{
    private readonly Dictionary<Piece, List<(BoolVar Is, long Ticks)>> before = [];
    private readonly Dictionary<Piece, List<BoolVar>> next = [];

    public List<ExactCloseDown> CloseDowns { get; } = [];

    public long LeastCleanOut(int activity) => Ticks(activity).DefaultIfEmpty(0).Min();

    public long MostCleanOut(int activity) => Ticks(activity).DefaultIfEmpty(0).Max();

    /// <summary>Lays the round trips, once every piece has its start.</summary>
    public void Add(IEnumerable<Piece> pieces)
    {
        foreach (var users in pieces.Where(p => net.Tool[p.Activity] >= 0).GroupBy(p => net.Tool[p.Activity]))
            Add(users.Key, [.. users]);
    }

    private IEnumerable<long> Ticks(int activity)
    {
        if (net.Tool[activity] < 0)
            return [];
        var tool = net.Problem.Tools[net.Tool[activity]];
        var load = net.Load[activity];
        var loads = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] == net.Tool[activity]).Select(a => net.Load[a]).Distinct();
        return loads.Select(l => tool.CleanOut[l][load]).Append(tool.Fill[load]);
    }

    private void Add(int t, Piece[] users)
    {
        var tool = net.Problem.Tools[t];
        foreach (var piece in users)
            (before[piece], next[piece]) = ([], []);
        var trip = model.AddCircuit();
        for (var i = 0; i < users.Length; i++)
        {
            AddFirst(trip, t, users[i], i + 1);
            trip.AddArc(i + 1, 0, model.NewBoolVar($"last{t}_{i}"));
            for (var j = 0; j < users.Length; j++)
            {
                if (i != j && Could(users[i], users[j]))
                    AddStep(trip, tool, users[i], i + 1, users[j], j + 1);
            }
        }

        foreach (var piece in users)
        {
            piece.CleanOut = LinearExpr.WeightedSum(before[piece].Select(b => b.Is), before[piece].Select(b => b.Ticks));
            AddCloseDown(tool, piece);
        }
    }

    // In one lot only the next units come next.
    private static bool Could(Piece from, Piece to) => from.Activity == to.Activity
        ? from.First + from.Units == to.First
        : to.Sittings[^1] >= from.Sittings[0];

    private void AddFirst(CircuitConstraint trip, int t, Piece piece, int node)
    {
        var tool = net.Problem.Tools[t];
        var load = net.Load[piece.Activity];
        var first = model.NewBoolVar($"first{t}_{node}");
        trip.AddArc(0, node, first);
        var held = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] == t).SelectMany(a => net[a].Past).OrderBy(r => r.Start).ThenBy(r => r.End).LastOrDefault();
        var open = net.Open[net.Workers[piece.Activity][0]];
        var sitting = held is null ? -1 : Array.FindIndex(open, o => o.Start <= held.Start && held.Start < o.End);
        if (sitting < 0 || piece.Within(sitting) is not { } within)
        {
            before[piece].Add((first, tool.Fill[load]));
            return;
        }

        var takesOver = model.NewBoolVar($"over{t}_{node}");
        model.AddBoolAnd([first, within]).OnlyEnforceIf(takesOver);
        model.AddBoolOr([takesOver, first.Not(), within.Not()]);
        before[piece].Add((first, tool.Fill[load]));
        before[piece].Add((takesOver, tool.CleanOut[net.Load[held!.Activity]][load] - tool.Fill[load]));
    }

    private void AddStep(CircuitConstraint trip, Tool tool, Piece from, int i, Piece to, int j)
    {
        var comes = model.NewBoolVar($"next{i}_{j}");
        trip.AddArc(i, j, comes);
        var load = net.Load[to.Activity];
        var common = from.Sittings.Intersect(to.Sittings).ToArray();
        var later = to.Sittings[^1] > from.Sittings[0] ? model.NewBoolVar($"later{i}_{j}") : null;
        var same = common.Length > 0 ? model.NewBoolVar($"same{i}_{j}") : null;
        model.Add(LinearExpr.Sum(new[] { same, later }.OfType<BoolVar>()) == comes);
        if (later is not null)
        {
            model.Add(to.Sitting >= from.Sitting + 1).OnlyEnforceIf(later);
            before[to].Add((later, tool.Fill[load]));
        }

        if (same is null)
        {
            if (from.Activity == to.Activity && to.Begins is { } always)
                model.Add(always == 1);
            return;
        }

        for (var d = 0; d < from.Sittings.Length; d++)
            model.AddBoolOr([same.Not(), from.In[d].Not(), .. to.Within(from.Sittings[d]) is { } within ? new ILiteral[] { within } : []]);
        model.Add(to.Start >= from.Start + net.Work(from.Activity, from.Units) + tool.CleanOut[net.Load[from.Activity]][load]).OnlyEnforceIf(same);
        before[to].Add((same, tool.CleanOut[net.Load[from.Activity]][load]));
        next[from].Add(same);
        // the same run: nobody else has the tool in between
        if (from.Activity == to.Activity && to.Begins is { } begins)
            model.AddImplication(begins.Not(), same);
    }

    private void AddCloseDown(Tool tool, Piece piece)
    {
        var ticks = tool.CloseDown[net.Load[piece.Activity]];
        if (ticks == 0)
            return;
        var open = net.Open[net.Workers[piece.Activity][0]];
        var name = $"close{piece.Activity}_{piece.First}";
        var isNeeded = model.NewBoolVar(name);
        model.Add(LinearExpr.Sum(next[piece].Append(isNeeded)) == 1);
        var start = model.NewIntVar(open[piece.Sittings[0]].Start, open[piece.Sittings[^1]].End, name);
        var interval = model.NewOptionalFixedSizeIntervalVar(start, ticks, isNeeded, name);
        CloseDowns.Add(new ExactCloseDown(piece, isNeeded, start, ticks, interval));
    }

    /// <summary>Ties the close-downs to the blocks, once every piece has its block.</summary>
    public void TieCloseDowns()
    {
        foreach (var (piece, isNeeded, start, ticks, _) in CloseDowns)
        {
            var open = net.Open[net.Workers[piece.Activity][0]];
            model.Add(start >= piece.HandsUntil).OnlyEnforceIf(isNeeded);
            model.Add(start + ticks <= LinearExpr.WeightedSum(piece.In, piece.Sittings.Select(d => open[d].End))).OnlyEnforceIf(isNeeded);
        }
    }
}
