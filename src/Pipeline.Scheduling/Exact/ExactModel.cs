using System.Collections.Immutable;
using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace Pipeline.Scheduling;

/// <summary>
/// A batch as a constraint model: pieces of lots, each in one open interval; a run begins where set-up is paid.
/// The open hours are domains of the starts and one choice of interval per piece.
/// </summary>
internal sealed class ExactModel
{
    // A due time of the least weight counts at least so little beside the weightiest.
    private const double WeightGrain = 100;

    // One tick of lateness, in ticks of the finish.
    private const long LatenessAboveFinish = 1000;

    private readonly Net net;
    private readonly long[] earliest;
    private readonly long[] latest;
    private readonly ExactTools tools;
    private readonly List<Piece>[] lots;

    /// <param name="net">A problem that the model covers.</param>
    /// <param name="parts">Where lots may be parted.</param>
    /// <param name="earliest">No unit's own work starts sooner.</param>
    /// <param name="latest">No unit's own work starts later.</param>
    /// <param name="lowerBound">No schedule finishes sooner.</param>
    /// <param name="upperBound">Everything is finished by then.</param>
    public ExactModel(Net net, LotParts parts, long[] earliest, long[] latest, long lowerBound, long upperBound)
    {
        this.net = net;
        this.earliest = earliest;
        this.latest = latest;
        lots = [.. Enumerable.Range(0, net.Count).Select(a => Pieces(a, parts.Firsts[a]).ToList())];
        Finish = Model.NewIntVar(Math.Min(lowerBound, upperBound), upperBound, "finish");
        tools = new ExactTools(Model, net);
        IsPossible = lowerBound <= upperBound;
        foreach (var piece in All)
            IsPossible &= AddStart(piece);
        if (!IsPossible)
            return;
        tools.Add(All);
        foreach (var lot in lots)
            AddLot(lot);
        tools.TieCloseDowns();
        AddHands();
        AddWaits();
        ExactPlaces.Add(Model, net, At, (earliest, latest));
        ExactHours.Add(Model, net, lots, tools.CloseDowns, Finish, (Math.Min(lowerBound, upperBound), upperBound));
    }

    public CpModel Model { get; } = new();

    public IntVar Finish { get; }

    /// <summary>False if a piece has no room at all, which is a proof already.</summary>
    public bool IsPossible { get; }

    private IEnumerable<Piece> All => lots.SelectMany(l => l);

    /// <summary>Asks for the earliest finish.</summary>
    public void AskForFinish() => Model.Minimize(Finish);

    /// <summary>Asks for less lateness than a schedule has, the least there is; and then for the earliest finish.</summary>
    public void AskForLateness(ImmutableArray<Due> dues, Schedule known)
    {
        var heaviest = dues.Max(due => due.WeightPerTick);
        var late = new List<LinearExpr>();
        long limit = 0;
        foreach (var due in dues.Where(due => due.WeightPerTick > 0 && lots[due.Activity].Count > 0))
        {
            var (a, piece) = (due.Activity, lots[due.Activity][^1]);
            var after = ((piece.Units - 1) * net.Step[a]) + net.Duration[a] + due.Afterwards - due.By;
            var weight = Math.Max(1, (long)Math.Round(WeightGrain * due.WeightPerTick / heaviest));
            var over = Model.NewIntVar(0, Math.Max(0, latest[net.Offset[a] + piece.First] + after), $"late{a}");
            Model.Add(over >= piece.Start + after);
            late.Add(over * weight);
            limit += weight * Math.Max(0, Runs(known).Where(r => r.Piece == piece).Max(r => OwnStart(r.Piece, r.Run)) + after);
        }

        Model.Add(LinearExpr.Sum(late) < limit);
        Model.Minimize((LinearExpr.Sum(late) * LatenessAboveFinish) + Finish);
    }

    /// <summary>Starts from a schedule that is known.</summary>
    public void Hint(Schedule schedule)
    {
        foreach (var (piece, run) in Runs(schedule))
        {
            Model.AddHint(piece.Start, OwnStart(piece, run));
            if (piece.Begins is { } begins)
                Model.AddHint(begins, run.FirstUnit == piece.First);
        }
    }

    /// <summary>Leaves only this schedule.</summary>
    public void Fix(Schedule schedule)
    {
        foreach (var (piece, run) in Runs(schedule))
        {
            Model.Add(piece.Start == OwnStart(piece, run));
            if (piece.Begins is { } begins)
                Model.Add(begins == (run.FirstUnit == piece.First ? 1 : 0));
        }
    }

    public Schedule Read(CpSolver solver) => ExactSchedule.Of(net, lots, tools.CloseDowns, solver);

    private long OwnStart(Piece piece, Run run) => run.WorkStart + ((piece.First - run.FirstUnit) * net.Step[piece.Activity]);

    private IEnumerable<(Piece Piece, Run Run)> Runs(Schedule schedule)
    {
        var runs = schedule.Runs.ToLookup(r => r.Activity);
        return All.Select(p => (p, runs[p.Activity].First(r => r.FirstUnit <= p.First && p.First < r.FirstUnit + r.Units)));
    }

    private IEnumerable<Piece> Pieces(int a, int[] firsts)
    {
        for (var i = 0; i < firsts.Length; i++)
        {
            var piece = new Piece(a, firsts[i], (i + 1 < firsts.Length ? firsts[i + 1] : net.Units[a]) - firsts[i]);
            // whether parted or not is only asked where a part costs something
            var isFree = net[a].SetUp + net[a].PutAway == 0 && net.Tool[a] < 0;
            if (!isFree && i > 0)
                piece.Begins = Model.NewBoolVar($"b{a}_{firsts[i]}");
            yield return piece;
        }
    }

    private bool AddStart(Piece piece)
    {
        var a = piece.Activity;
        var u = net.Offset[a] + piece.First;
        var from = earliest[u];
        var to = latest[u];
        for (var k = 1; k < piece.Units; k++)
        {
            from = Math.Max(from, earliest[u + k] - (k * net.Step[a]));
            to = Math.Min(to, latest[u + k] - (k * net.Step[a]));
        }

        if (net.PinnedStart[a] is { } pin)
            (from, to) = (Math.Max(from, pin + net[a].SetUp), net.Tool[a] < 0 ? Math.Min(to, pin + net[a].SetUp) : to);
        if (from > to)
            return false;
        if (!net.Attended[a])
        {
            piece.Start = Model.NewIntVar(from, to, $"s{a}_{piece.First}");
            piece.HandsFrom = piece.HandsUntil = piece.Start;
            return true;
        }

        var lead = (piece.Begins is null ? net[a].SetUp : 0) + tools.LeastCleanOut(a);
        var rest = net.Work(a, piece.Units) + (piece.First + piece.Units == net.Units[a] ? net[a].PutAway : 0);
        var open = net.Open[net.Workers[a][0]];
        var rooms = Enumerable.Range(0, open.Length)
            .Select(d => (Sitting: d, From: Math.Max(from, open[d].Start + lead), To: Math.Min(to, open[d].End - rest)))
            .Where(r => r.From <= r.To).ToArray();
        if (rooms.Length == 0)
            return false;
        piece.Start = Model.NewIntVarFromDomain(Domain.FromIntervals([.. rooms.Select(r => new[] { r.From, r.To })]), $"s{a}_{piece.First}");
        piece.Sittings = [.. rooms.Select(r => r.Sitting)];
        piece.In = [.. rooms.Select(r => Model.NewBoolVar($"in{a}_{piece.First}_{r.Sitting}"))];
        Model.AddExactlyOne(piece.In);
        Model.Add(piece.Start >= LinearExpr.WeightedSum(piece.In, rooms.Select(r => r.From)));
        Model.Add(piece.Start <= LinearExpr.WeightedSum(piece.In, rooms.Select(r => r.To)));
        return true;
    }

    private void AddLot(List<Piece> lot)
    {
        for (var i = 0; i < lot.Count; i++)
        {
            var piece = lot[i];
            var a = piece.Activity;
            piece.Ends = i + 1 < lot.Count ? lot[i + 1].Begins : null;
            if (net.Attended[a])
                AddBlock(piece, isFree: net[a].SetUp + net[a].PutAway == 0 && net.Tool[a] < 0);
            Model.Add(piece.HandsFrom >= net[a].NotBefore);
            if (net.PinnedStart[a] is { } pin)
                Model.Add(piece.HandsFrom == pin);
            if (i > 0)
                AddOrder(lot[i - 1], piece);
        }

        if (lot.Count > 0)
            Model.Add(Finish >= lot[^1].Start + ((lot[^1].Units - 1) * net.Step[lot[^1].Activity]) + net.Duration[lot[^1].Activity]);
    }

    private void AddBlock(Piece piece, bool isFree)
    {
        var a = piece.Activity;
        LinearExpr setUp = piece.Begins is { } begins ? begins * net[a].SetUp : LinearExpr.Constant(net[a].SetUp);
        LinearExpr putAway = piece.Ends is { } ends ? ends * net[a].PutAway : LinearExpr.Constant(net[a].PutAway);
        piece.HandsFrom = piece.Start - setUp - piece.CleanOut;
        piece.HandsUntil = piece.Start + net.Work(a, piece.Units) + putAway;
        if (isFree)
            return;
        var open = net.Open[net.Workers[a][0]];
        Model.Add(piece.HandsFrom >= LinearExpr.WeightedSum(piece.In, piece.Sittings.Select(d => open[d].Start)));
        Model.Add(piece.HandsUntil <= LinearExpr.WeightedSum(piece.In, piece.Sittings.Select(d => open[d].End)));
    }

    private void AddOrder(Piece before, Piece piece)
    {
        var a = piece.Activity;
        var work = net.Step[a] * before.Units;
        if (net.Attended[a])
            Model.Add(piece.HandsFrom >= before.HandsUntil);
        Model.Add(piece.Start >= before.Start + work);
        if (piece.Begins is not { } begins)
            return;
        Model.Add(piece.Start == before.Start + work).OnlyEnforceIf(begins.Not());
        foreach (var d in before.Sittings.Union(piece.Sittings))
        {
            var (one, other) = (before.Within(d), piece.Within(d));
            List<ILiteral> forth = [begins];
            if (one is not null)
                forth.Add(one.Not());
            if (other is not null)
                forth.Add(other);
            if (one is not null)
                Model.AddBoolOr(forth);
            if (other is not null && one is null)
                Model.AddBoolOr([begins, other.Not()]);
        }
    }

    // One thing at a time, what has happened included.
    private void AddHands()
    {
        for (var w = 0; w < net.Problem.Workers.Length; w++)
        {
            var mine = All.Where(p => net.Attended[p.Activity] && net.Workers[p.Activity][0] == w).ToList();
            if (mine.Count == 0)
                continue;
            var blocks = mine.ConvertAll(Block);
            blocks.AddRange(tools.CloseDowns.Where(c => net.Workers[c.After.Activity][0] == w).Select(c => c.Interval));
            var past = Enumerable.Range(0, net.Count).SelectMany(a => net[a].Past).Where(r => r.Worker == w && r.End > r.Start);
            var pasts = past.Select(r => (r.Start, r.End)).OrderBy(r => r.Start).ToList();
            for (var i = 0; i < pasts.Count; i++)
            {
                // facts may overlap each other
                var from = i == 0 ? pasts[i].Start : Math.Max(pasts[i].Start, pasts.Take(i).Max(p => p.End));
                if (from < pasts[i].End)
                    blocks.Add(Model.NewFixedSizeIntervalVar(from, pasts[i].End - from, $"past{w}_{i}"));
            }

            Model.AddNoOverlap(blocks);
        }
    }

    private IntervalVar Block(Piece piece)
    {
        var a = piece.Activity;
        var name = $"hands{a}_{piece.First}";
        if (net.Tool[a] < 0 && piece.Begins is null && piece.Ends is null)
            return Model.NewFixedSizeIntervalVar(piece.Start - net[a].SetUp, net[a].SetUp + net.Work(a, piece.Units) + net[a].PutAway, name);
        var from = Model.NewIntVar(net[a].NotBefore, latest[net.Offset[a] + piece.First], name);
        var most = net[a].SetUp + tools.MostCleanOut(a) + net.Work(a, piece.Units) + net[a].PutAway;
        var size = Model.NewIntVar(net.Work(a, piece.Units), most, name);
        var until = Model.NewIntVar(net[a].NotBefore, latest[net.Offset[a] + piece.First] + most, name);
        Model.Add(from == piece.HandsFrom);
        Model.Add(until == piece.HandsUntil);
        return Model.NewIntervalVar(from, size, until, name);
    }

    private void AddWaits()
    {
        foreach (var arc in net.In.SelectMany(arcs => arcs))
        {
            if (arc.Whole)
                Add(arc, net.Units[arc.From] - 1, 0);
            else
            {
                var pairs = Enumerable.Range(0, net.Units[arc.From]).Where(k => IsAtAnEnd(arc.From, k) || IsAtAnEnd(arc.To, k));
                foreach (var k in pairs)
                    Add(arc, k, k);
            }
        }
    }

    // Between the ends of two pieces nothing binds that does not at an end.
    private bool IsAtAnEnd(int a, int unit) =>
        unit < net.Done[a] || Of(a, unit) is var piece && (unit == piece.First || unit == piece.First + piece.Units - 1);

    private void Add(Arc arc, int from, int to)
    {
        if (from < net.Done[arc.From] && to < net.Done[arc.To])
            return;
        Model.Add(At(arc.To, to) >= At(arc.From, from) + arc.Lag);
    }

    private Piece Of(int a, int unit) => lots[a].Find(p => unit < p.First + p.Units)!;

    private LinearExpr At(int a, int unit)
    {
        if (unit >= net.Done[a])
            return Of(a, unit) is var piece ? piece.Start + ((unit - piece.First) * net.Step[a]) : null!;
        var run = net[a].Past.First(r => unit < r.FirstUnit + r.Units);
        return LinearExpr.Constant(run.WorkStart + ((unit - run.FirstUnit) * net.Step[a]));
    }
}
