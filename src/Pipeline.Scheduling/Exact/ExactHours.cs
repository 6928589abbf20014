using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>
/// What the exact model says twice, so that it sees sooner how full an open interval is: all the work in it, each lot's
/// set-up once, each load's way into the tool, and one close-down fit its length, and the finish lies behind them.
/// </summary>
internal sealed class ExactHours(CpModel model, Net net, ExactTools tools, Opening[][] openings, IntVar finish, (long Lower, long Upper) bounds)
{
    public void Add(List<Piece>[] lots)
    {
        for (var w = 0; w < net.Open.Length; w++)
        {
            var mine = lots.Select(l => l.FindAll(p => p.CouldBeDoneBy(w))).Where(l => l.Count > 0).ToList();
            if (mine.Count == 0)
                continue;
            foreach (var opening in mine.SelectMany(l => l).SelectMany(p => p.Openings).Where(o => o.Worker == w).Distinct().OrderBy(o => o.Sitting))
                Add(mine, opening);
            AddTotal([.. mine.SelectMany(l => l)], w);
        }
    }

    private void Add(List<List<Piece>> lots, Opening opening)
    {
        var name = $"{opening.Worker}_{opening.Sitting}";
        var used = model.NewBoolVar($"used{name}");
        var content = new List<LinearExpr>();
        var tail = new List<LinearExpr>();
        var loads = new Dictionary<(int Tool, int Load), BoolVar>();
        foreach (var lot in lots)
        {
            var here = lot.Select(p => (Piece: p, In: p.Within(opening))).Where(p => p.In is not null).ToList();
            if (here.Count == 0)
                continue;
            var a = lot[0].Activity;
            content.AddRange(here.Select(p => p.In! * net.Work(a, p.Piece.Units)));
            foreach (var (_, within) in here)
                model.AddImplication(within!, used);
            var once = net[a].SetUp + net[a].PutAway;
            if (once > 0)
                content.Add(Any(here.Select(p => p.In!)) * once);
            if (net.Tool[a] < 0)
                continue;
            if (!loads.TryGetValue((net.Tool[a], net.Load[a]), out var load))
                loads[(net.Tool[a], net.Load[a])] = load = model.NewBoolVar($"load{name}");
            foreach (var (_, within) in here)
                model.AddImplication(within!, load);
        }

        foreach (var tool in loads.GroupBy(l => l.Key.Tool).Where(t => HasAlone(t.Key, opening)))
            AddTool(tool.Key, tool.ToDictionary(l => l.Key.Load, l => l.Value), content, tail);
        model.Add(LinearExpr.Sum(content.Concat(tail)) <= opening.Open.Length);
        // what is put away last may come after the finish
        var from = opening.Open.Start - lots.Max(l => net[l[0].Activity].PutAway);
        if (from > bounds.Lower)
            model.Add(finish >= bounds.Lower + (used * (from - bounds.Lower)) + LinearExpr.Sum(content));
        else
            model.Add(finish >= from + LinearExpr.Sum(content));
    }

    // Nobody else could have had the tool at hand meanwhile: it was clean at the beginning, and is closed down by this worker.
    private bool HasAlone(int tool, Opening opening) => !Enumerable.Range(0, net.Count).Where(a => net.Tool[a] == tool && net.Done[a] < net.Units[a])
        .SelectMany(a => net.Workers[a]).Distinct().Where(w => w != opening.Worker).SelectMany(w => openings[w]).Any(o => o.Overlaps(opening));

    private void AddTool(int t, Dictionary<int, BoolVar> loads, List<LinearExpr> content, List<LinearExpr> tail)
    {
        var tool = net.Problem.Tools[t];
        var hasPast = Enumerable.Range(0, net.Count).Any(a => net.Tool[a] == t && net.Done[a] > 0);
        var others = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] == t).Select(a => net.Load[a]).Distinct().ToArray();
        foreach (var (load, isIn) in loads)
        {
            var way = others.Where(l => l != load).Select(l => tool.CleanOut[l][load]).Append(tool.Fill[load]).Min();
            if (way > 0 && !hasPast)
                content.Add(isIn * way);
        }

        var close = loads.Keys.Min(l => tool.CloseDown[l]);
        if (close > 0)
            tail.Add(Any(loads.Values) * close);
    }

    // Everything that one worker does, with the clean-outs as they really come, fits the open hours up to the finish.
    private void AddTotal(Piece[] pieces, int w)
    {
        var open = net.Open[w];
        var closeDowns = tools.CloseDowns.SelectMany(c => c.Hands.Where(h => h.Worker == w).Select(h => (Tool: net.Tool[c.After.Activity], h.Does, c.Ticks))).ToList();
        // what is put away or closed down last may come after the finish
        var after = pieces.Max(p => net[p.Activity].PutAway) + closeDowns.GroupBy(c => c.Tool).Sum(g => net.Problem.Tools[g.Key].Count * g.Max(c => c.Ticks));
        var content = pieces.Select(p => Content(p, w)).Concat(closeDowns.Select(c => c.Does * c.Ticks));
        var total = LinearExpr.Sum(content) - after;
        var lasts = new List<BoolVar>();
        var first = pieces.Min(p => p.Openings.Where(o => o.Worker == w).Min(o => o.Sitting));
        if (Array.TrueForAll(pieces, p => p.Hands.Length > 1) && bounds.Lower <= open[first].Start)
        {
            // all may be done by others before
            var isBefore = model.NewBoolVar($"last{w}");
            lasts.Add(isBefore);
            model.Add(finish <= open[first].Start).OnlyEnforceIf(isBefore);
            model.Add(total <= 0).OnlyEnforceIf(isBefore);
        }

        long before = 0;
        for (var d = first; d < open.Length && open[d].Start <= bounds.Upper; before += open[d++].Length)
        {
            var next = d + 1 < open.Length ? open[d + 1].Start : bounds.Upper;
            if (next < bounds.Lower)
                continue;
            var isLast = model.NewBoolVar($"last{w}_{d}");
            lasts.Add(isLast);
            model.Add(finish >= open[d].Start).OnlyEnforceIf(isLast);
            model.Add(finish <= next).OnlyEnforceIf(isLast);
            model.Add(total <= before + open[d].Length).OnlyEnforceIf(isLast);
            model.Add(total <= finish + (before - open[d].Start)).OnlyEnforceIf(isLast);
        }

        model.AddExactlyOne(lasts);
    }

    // At least, if others could do it too.
    private LinearExpr Content(Piece piece, int w)
    {
        var (_, does) = Array.Find(piece.Hands, h => h.Worker == w);
        if (does is null)
            return piece.HandsUntil - piece.HandsFrom;
        var a = piece.Activity;
        var least = (piece.Begins is null ? net[a].SetUp : 0) + tools.LeastCleanOut(a) + net.Work(a, piece.Units) + (piece.Ends is null ? net[a].PutAway : 0);
        return does * least;
    }

    private BoolVar Any(IEnumerable<BoolVar> of)
    {
        var any = model.NewBoolVar("any");
        foreach (var one in of)
            model.AddImplication(one, any);
        return any;
    }
}
