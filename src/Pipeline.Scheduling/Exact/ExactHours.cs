using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>
/// What the exact model says twice, so that it sees sooner how full an open interval is: all the work in it, each lot's
/// set-up once, each load's way into the tool, and one close-down fit its length, and the finish lies behind them.
/// </summary>
internal static class ExactHours
{
    public static void Add(CpModel model, Net net, List<Piece>[] lots, List<ExactCloseDown> closeDowns, IntVar finish, (long Lower, long Upper) bounds)
    {
        for (var w = 0; w < net.Open.Length; w++)
        {
            var mine = lots.Where(l => l.Count > 0 && net.Attended[l[0].Activity] && net.Workers[l[0].Activity][0] == w).ToList();
            foreach (var d in mine.SelectMany(l => l).SelectMany(p => p.Sittings).Distinct().Order())
                Add(model, net, mine, w, d, finish, bounds.Lower);
            AddTotal(model, net, [.. mine.SelectMany(l => l)], closeDowns.FindAll(c => net.Workers[c.After.Activity][0] == w), w, finish, bounds);
        }
    }

    private static void Add(CpModel model, Net net, List<List<Piece>> lots, int w, int d, IntVar finish, long lowerBound)
    {
        var open = net.Open[w][d];
        var used = model.NewBoolVar($"used{w}_{d}");
        var content = new List<LinearExpr>();
        var tail = new List<LinearExpr>();
        var loads = new Dictionary<(int Tool, int Load), BoolVar>();
        foreach (var lot in lots)
        {
            var here = lot.Select(p => (Piece: p, In: p.Within(d))).Where(p => p.In is not null).ToList();
            if (here.Count == 0)
                continue;
            var a = lot[0].Activity;
            content.AddRange(here.Select(p => p.In! * net.Work(a, p.Piece.Units)));
            foreach (var (_, within) in here)
                model.AddImplication(within!, used);
            var once = net[a].SetUp + net[a].PutAway;
            if (once > 0)
                content.Add(Any(model, here.Select(p => p.In!)) * once);
            if (net.Tool[a] < 0)
                continue;
            if (!loads.TryGetValue((net.Tool[a], net.Load[a]), out var load))
                loads[(net.Tool[a], net.Load[a])] = load = model.NewBoolVar($"load{w}_{d}");
            foreach (var (_, within) in here)
                model.AddImplication(within!, load);
        }

        foreach (var tool in loads.GroupBy(l => l.Key.Tool))
            AddTool(model, net, tool.Key, tool.ToDictionary(l => l.Key.Load, l => l.Value), content, tail);
        model.Add(LinearExpr.Sum(content.Concat(tail)) <= open.Length);
        // what is put away last may come after the finish
        var from = open.Start - lots.Max(l => net[l[0].Activity].PutAway);
        if (from > lowerBound)
            model.Add(finish >= lowerBound + (used * (from - lowerBound)) + LinearExpr.Sum(content));
        else
            model.Add(finish >= from + LinearExpr.Sum(content));
    }

    // Everything, with the clean-outs as they really come, fits the open hours up to the finish.
    private static void AddTotal(CpModel model, Net net, Piece[] pieces, List<ExactCloseDown> closeDowns, int w, IntVar finish, (long Lower, long Upper) bounds)
    {
        if (pieces.Length == 0)
            return;
        var open = net.Open[w];
        // what is put away or closed down last may come after the finish
        var after = pieces.Max(p => net[p.Activity].PutAway) + closeDowns.GroupBy(c => net.Tool[c.After.Activity]).Sum(g => g.Max(c => c.Ticks));
        var content = pieces.Select(p => p.HandsUntil - p.HandsFrom).Concat(closeDowns.Select(c => c.IsNeeded * c.Ticks));
        var total = LinearExpr.Sum(content) - after;
        var lasts = new List<BoolVar>();
        long before = 0;
        for (var d = pieces.Min(p => p.Sittings[0]); d < open.Length && open[d].Start <= bounds.Upper; before += open[d++].Length)
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

    private static void AddTool(CpModel model, Net net, int t, Dictionary<int, BoolVar> loads, List<LinearExpr> content, List<LinearExpr> tail)
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
            tail.Add(Any(model, loads.Values) * close);
    }

    private static BoolVar Any(CpModel model, IEnumerable<BoolVar> of)
    {
        var any = model.NewBoolVar("any");
        foreach (var one in of)
            model.AddImplication(one, any);
        return any;
    }
}
