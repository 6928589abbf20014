using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>The hands of the exact model: each worker does one thing at a time, what has happened included, and no more in a day than the cap.</summary>
internal sealed class ExactHands
{
    private readonly CpModel model;
    private readonly Net net;
    private readonly long[] latest;
    private readonly ExactTools tools;
    private readonly Dictionary<Piece, (LinearExpr From, LinearExpr Size, LinearExpr Until)> blocks = [];

    private ExactHands(CpModel model, Net net, ExactTools tools, long[] latest)
    {
        this.model = model;
        this.net = net;
        this.tools = tools;
        this.latest = latest;
    }

    public static void Add(CpModel model, Net net, IEnumerable<Piece> pieces, ExactTools tools, long[] latest)
    {
        var hands = new ExactHands(model, net, tools, latest);
        var all = pieces.ToList();
        for (var w = 0; w < net.Open.Length; w++)
            hands.Add(all.FindAll(p => p.CouldBeDoneBy(w)), w);
    }

    private void Add(List<Piece> pieces, int w)
    {
        if (pieces.Count == 0)
            return;
        var intervals = pieces.ConvertAll(p => Block(p, Array.Find(p.Hands, h => h.Worker == w).Does, w));
        intervals.AddRange(tools.CloseDowns.SelectMany(c => c.Hands.Where(h => h.Worker == w)
            .Select(h => model.NewOptionalFixedSizeIntervalVar(c.Start, c.Ticks, h.Does, $"close{c.After.Activity}_{c.After.First}_{w}"))));
        var pasts = Past(w);
        for (var i = 0; i < pasts.Count; i++)
        {
            // facts may overlap each other
            var from = i == 0 ? pasts[i].Start : Math.Max(pasts[i].Start, pasts.Take(i).Max(p => p.End));
            if (from < pasts[i].End)
                intervals.Add(model.NewFixedSizeIntervalVar(from, pasts[i].End - from, $"past{w}_{i}"));
        }

        model.AddNoOverlap(intervals);
        if (net.Problem.Workers[w].MostPerDay is not null)
            AddCaps(pieces, w);
    }

    private List<Run> Past(int w) =>
        [.. Enumerable.Range(0, net.Count).SelectMany(a => net[a].Past).Where(r => r.Worker == w && r.End > r.Start).OrderBy(r => r.Start)];

    private IntervalVar Block(Piece piece, BoolVar? does, int w)
    {
        if (!blocks.TryGetValue(piece, out var block))
            blocks[piece] = block = Block(piece);
        var name = $"hands{piece.Activity}_{piece.First}_{w}";
        return does is null ? model.NewIntervalVar(block.From, block.Size, block.Until, name) : model.NewOptionalIntervalVar(block.From, block.Size, block.Until, does, name);
    }

    private (LinearExpr From, LinearExpr Size, LinearExpr Until) Block(Piece piece)
    {
        var a = piece.Activity;
        var name = $"hands{a}_{piece.First}";
        var least = net.Work(a, piece.Units);
        if (IsFixed(piece))
        {
            var size = net[a].SetUp + least + net[a].PutAway;
            return (piece.Start - net[a].SetUp, LinearExpr.Constant(size), piece.Start + (least + net[a].PutAway));
        }

        var from = model.NewIntVar(net[a].NotBefore, latest[net.Offset[a] + piece.First], name);
        var most = Most(piece);
        var until = model.NewIntVar(net[a].NotBefore, latest[net.Offset[a] + piece.First] + most, name);
        model.Add(from == piece.HandsFrom);
        model.Add(until == piece.HandsUntil);
        return (from, model.NewIntVar(least, most, name), until);
    }

    private bool IsFixed(Piece piece) => net.Tool[piece.Activity] < 0 && piece.Begins is null && piece.Ends is null;

    private long Most(Piece piece) =>
        net[piece.Activity].SetUp + tools.MostCleanOut(piece.Activity) + net.Work(piece.Activity, piece.Units) + net[piece.Activity].PutAway;

    // What has happened counts towards the cap, but cannot break it.
    private void AddCaps(List<Piece> pieces, int w)
    {
        var most = net.MostPerDay[w];
        var past = Past(w);
        foreach (var day in net.Open[w].Select((open, d) => (Open: open, Sitting: d)).GroupBy(o => net.Day[w][o.Sitting]))
        {
            if (day.Sum(o => o.Open.Length) <= most)
                continue;
            var sittings = day.Select(o => o.Sitting).ToHashSet();
            bool IsOn(Opening opening) => opening.Worker == w && sittings.Contains(opening.Sitting);
            var content = pieces.Select(p => OnDay(p, IsOn)).OfType<LinearExpr>().ToList();
            if (content.Count == 0)
                continue;
            content.AddRange(tools.CloseDowns.Select(c => OnDay(c, IsOn)).OfType<LinearExpr>());
            var done = day.Sum(o => past.Sum(r => Math.Max(0, Math.Min(r.End, o.Open.End) - Math.Max(r.Start, o.Open.Start))));
            model.Add(LinearExpr.Sum(content) <= Math.Max(0, most - done));
        }
    }

    private LinearExpr? OnDay(Piece piece, Func<Opening, bool> isOn)
    {
        var on = piece.Where(isOn).ToArray();
        if (on.Length == 0)
            return null;
        var most = Most(piece);
        if (IsFixed(piece))
            return LinearExpr.Sum(on) * most;
        var least = net.Work(piece.Activity, piece.Units);
        var more = model.NewIntVar(0, most - least, $"more{piece.Activity}_{piece.First}");
        model.Add(more >= piece.HandsUntil - piece.HandsFrom - least - ((1 - LinearExpr.Sum(on)) * (most - least)));
        return (LinearExpr.Sum(on) * least) + more;
    }

    private LinearExpr? OnDay(ExactCloseDown close, Func<Opening, bool> isOn)
    {
        var on = close.After.Where(isOn).ToArray();
        if (on.Length == 0)
            return null;
        var isThere = model.NewBoolVar($"closes{close.After.Activity}_{close.After.First}");
        model.Add(isThere >= close.IsNeeded + LinearExpr.Sum(on) - 1);
        return isThere * close.Ticks;
    }
}
