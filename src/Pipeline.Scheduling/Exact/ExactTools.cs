using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>A close-down that may be needed after a piece, by whoever does the piece.</summary>
/// <param name="After">The piece.</param>
/// <param name="IsNeeded">Whether it is.</param>
/// <param name="Start">When.</param>
/// <param name="Ticks">How long it takes.</param>
/// <param name="Hands">Who could do it, and whether it is needed and that worker does it.</param>
internal sealed record ExactCloseDown(Piece After, BoolVar IsNeeded, IntVar Start, long Ticks, (int Worker, BoolVar Does)[] Hands);

/// <summary>
/// The tools of the exact model: each goes from piece to piece. The next piece begins before the open interval of whoever had
/// the tool is over, after a clean-out from one load to the other, or later, after a close-down and a fill.
/// Tools alike are told apart only by what has happened with them.
/// </summary>
internal sealed class ExactTools(CpModel model, Net net)
{
    private readonly Dictionary<Piece, List<(BoolVar Is, long Ticks)>> before = [];
    private readonly Dictionary<Piece, List<BoolVar>> next = [];
    private readonly List<Takeover> takeovers = [];
    private readonly ExactToolNumbers numbers = new(net);

    // A piece that begins before or after another's open interval, or a past one, is over.
    private sealed record Takeover(BoolVar Is, Piece? From, long LeftAt, Piece To, bool IsLater);

    public List<ExactCloseDown> CloseDowns { get; } = [];

    public long LeastCleanOut(int activity) => Ticks(activity).DefaultIfEmpty(0).Min();

    public long MostCleanOut(int activity) => Ticks(activity).DefaultIfEmpty(0).Max();

    /// <summary>Lays the ways of the tools, once every piece has its start.</summary>
    public void Add(IEnumerable<Piece> pieces)
    {
        foreach (var users in pieces.Where(p => net.Tool[p.Activity] >= 0).GroupBy(p => net.Tool[p.Activity]))
            Add(users.Key, [.. users]);
    }

    /// <summary>Which of the tools alike each piece has.</summary>
    public Dictionary<Piece, int> Numbers(CpSolver solver) => numbers.Read(solver);

    /// <summary>Ties close-downs and changes of hands to the blocks, once every piece has its block.</summary>
    public void Tie()
    {
        foreach (var close in CloseDowns)
        {
            model.Add(close.Start >= close.After.HandsUntil).OnlyEnforceIf(close.IsNeeded);
            model.Add(close.Start + close.Ticks <= close.After.Closes).OnlyEnforceIf(close.IsNeeded);
        }

        foreach (var (takes, from, leftAt, to, isLater) in takeovers)
        {
            var over = from?.Closes ?? LinearExpr.Constant(leftAt);
            if (isLater)
                model.Add(to.HandsFrom >= over).OnlyEnforceIf(takes);
            else
                model.Add(to.HandsFrom <= over - 1).OnlyEnforceIf(takes);
            if (!isLater && from is not null)
                model.Add(to.HandsFrom >= from.HandsUntil).OnlyEnforceIf(takes);
        }
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
        var addArc = AddWays(tool.Count);
        AddFirsts(t, users, addArc);
        for (var i = 0; i < users.Length; i++)
        {
            addArc(i + 1, 0, model.NewBoolVar($"last{t}_{i}"));
            for (var j = 0; j < users.Length; j++)
            {
                if (i != j && Could(users[i], users[j], tool.Count > 1))
                    addArc(i + 1, j + 1, AddStep(tool, users[i], i + 1, users[j], j + 1));
            }
        }

        foreach (var piece in users)
        {
            piece.CleanOut = LinearExpr.WeightedSum(before[piece].Select(b => b.Is), before[piece].Select(b => b.Ticks));
            AddCloseDown(tool, piece);
        }
    }

    private Action<int, int, ILiteral> AddWays(int count)
    {
        if (count == 1)
        {
            var way = model.AddCircuit();
            return (from, to, comes) => way.AddArc(from, to, comes);
        }

        var ways = model.AddMultipleCircuit();
        return (from, to, comes) => ways.AddArc(from, to, comes);
    }

    // In one lot the units come in order; with one tool, only the next units come next.
    private static bool Could(Piece from, Piece to, bool hasOthers) => from.Activity != to.Activity
        ? to.Openings[^1].Open.End > from.Openings.Min(o => o.Open.Start)
        : hasOthers ? from.First < to.First : from.First + from.Units == to.First;

    // What comes first with each tool: a past load may still be in it.
    private void AddFirsts(int t, Piece[] users, Action<int, int, ILiteral> addArc)
    {
        var held = ExactHeld.Of(net, t, users.Min(p => p.Openings.Min(o => o.Open.Start)));
        var clean = net.Problem.Tools[t].Count - held.Length;
        var firsts = new List<BoolVar>[held.Length + 1];
        for (var n = 0; n < firsts.Length; n++)
            firsts[n] = [];
        for (var i = 0; i < users.Length; i++)
        {
            var first = model.NewBoolVar($"first{t}_{i}");
            addArc(0, i + 1, first);
            var load = net.Load[users[i].Activity];
            var kinds = new List<BoolVar>();
            for (var n = 0; n < held.Length; n++)
            {
                var kind = AddFirst(net.Problem.Tools[t], held[n], users[i], $"{t}_{i}_{n}");
                kinds.Add(kind);
                firsts[n].Add(kind);
                numbers.AddFirst(users[i], held[n].Number, kind);
            }

            if (clean > 0)
            {
                var fresh = held.Length == 0 ? first : model.NewBoolVar($"fresh{t}_{i}");
                kinds.Add(fresh);
                firsts[^1].Add(fresh);
                before[users[i]].Add((fresh, net.Problem.Tools[t].Fill[load]));
                numbers.AddFirst(users[i], number: null, fresh);
            }

            if (held.Length > 0)
                model.Add(LinearExpr.Sum(kinds) == first);
        }

        for (var n = 0; n < held.Length; n++)
            model.AddAtMostOne(firsts[n]);
        if (clean > 0)
            model.Add(LinearExpr.Sum(firsts[^1]) <= clean);
    }

    private BoolVar AddFirst(Tool tool, ExactHeld held, Piece piece, string name)
    {
        var load = net.Load[piece.Activity];
        var is1st = model.NewBoolVar($"held{name}");
        var over = model.NewBoolVar($"over{name}");
        var later = model.NewBoolVar($"later{name}");
        model.Add(over + later == is1st);
        model.AddBoolOr([over.Not(), .. piece.Where(o => o.Open.Start < held.LeftAt)]);
        model.AddBoolOr([later.Not(), .. piece.Where(o => o.Open.End > held.LeftAt)]);
        takeovers.Add(new Takeover(over, null, held.LeftAt, piece, IsLater: false));
        takeovers.Add(new Takeover(later, null, held.LeftAt, piece, IsLater: true));
        before[piece].Add((over, tool.CleanOut[held.Load][load]));
        before[piece].Add((later, tool.Fill[load]));
        return is1st;
    }

    private BoolVar AddStep(Tool tool, Piece from, int i, Piece to, int j)
    {
        var comes = model.NewBoolVar($"next{i}_{j}");
        numbers.AddNext(from, to, comes);
        var later = to.Openings[^1].Rank > from.Openings[0].Rank ? AddLater(tool, from, to, $"later{i}_{j}") : null;
        var soon = Array.Exists(from.Openings, o => Array.Exists(to.Openings, p => o.Overlaps(p))) ? AddSoon(tool, from, to, $"same{i}_{j}") : null;
        model.Add(LinearExpr.Sum(new[] { soon, later }.OfType<BoolVar>()) == comes);
        if (from.Activity != to.Activity || from.First + from.Units != to.First || to.Begins is not { } begins)
            return comes;
        // the same run: nobody else has the tool in between
        if (soon is null)
            model.Add(begins == 1);
        else
            model.AddImplication(begins.Not(), soon);
        return comes;
    }

    private BoolVar AddLater(Tool tool, Piece from, Piece to, string name)
    {
        var later = model.NewBoolVar(name);
        model.Add(to.Rank >= from.Rank + 1).OnlyEnforceIf(later);
        before[to].Add((later, tool.Fill[net.Load[to.Activity]]));
        // with one pair of hands the next open interval begins after this one
        if (!from.IsInSameHands(to))
            takeovers.Add(new Takeover(later, from, 0, to, IsLater: true));
        return later;
    }

    private BoolVar AddSoon(Tool tool, Piece from, Piece to, string name)
    {
        var soon = model.NewBoolVar(name);
        for (var d = 0; d < from.Openings.Length; d++)
        {
            var open = from.Openings[d];
            model.AddBoolOr([soon.Not(), from.In[d].Not(), .. to.Where(o => o.Overlaps(open))]);
        }

        var cleanOut = tool.CleanOut[net.Load[from.Activity]][net.Load[to.Activity]];
        model.Add(to.Start >= from.Start + net.Work(from.Activity, from.Units) + cleanOut).OnlyEnforceIf(soon);
        before[to].Add((soon, cleanOut));
        next[from].Add(soon);
        if (!from.IsInSameHands(to))
            takeovers.Add(new Takeover(soon, from, 0, to, IsLater: false));
        return soon;
    }

    private void AddCloseDown(Tool tool, Piece piece)
    {
        var ticks = tool.CloseDown[net.Load[piece.Activity]];
        if (ticks == 0)
            return;
        var name = $"close{piece.Activity}_{piece.First}";
        var isNeeded = model.NewBoolVar(name);
        model.Add(LinearExpr.Sum(next[piece].Append(isNeeded)) == 1);
        var start = model.NewIntVar(piece.Openings.Min(o => o.Open.Start), piece.Openings[^1].Open.End, name);
        var hands = piece.Hands.Select(h => (h.Worker, Does: h.Does is null ? isNeeded : model.NewBoolVar($"{name}_{h.Worker}"))).ToArray();
        CloseDowns.Add(new ExactCloseDown(piece, isNeeded, start, ticks, hands));
        if (hands.Length == 1)
            return;
        model.Add(LinearExpr.Sum(hands.Select(h => h.Does)) == isNeeded);
        for (var i = 0; i < hands.Length; i++)
            model.AddImplication(hands[i].Does, piece.Hands[i].Does!);
    }
}
