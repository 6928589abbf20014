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
    private readonly Opening[][] openings;

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
        openings = Opening.Of(net);
        IsPossible = lowerBound <= upperBound;
        foreach (var piece in All)
            IsPossible &= AddStart(piece);
        if (!IsPossible)
            return;
        tools.Add(All);
        foreach (var lot in lots)
            AddLot(lot);
        tools.Tie();
        ExactHands.Add(Model, net, All, tools, latest);
        AddWaits();
        ExactPlaces.Add(Model, net, At, (earliest, latest));
        new ExactHours(Model, net, tools, openings, Finish, (Math.Min(lowerBound, upperBound), upperBound)).Add(lots);
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
            for (var i = 0; i < piece.In.Length; i++)
                Model.AddHint(piece.In[i], IsIn(run, piece.Openings[i]));
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
            for (var i = 0; i < piece.In.Length; i++)
                Model.Add(piece.In[i] == (IsIn(run, piece.Openings[i]) ? 1 : 0));
            Model.Add(piece.CleanOut == (run.FirstUnit == piece.First ? run.CleanOut : 0));
            if (piece.Begins is { } begins)
                Model.Add(begins == (run.FirstUnit == piece.First ? 1 : 0));
        }
    }

    public Schedule Read(CpSolver solver) => ExactSchedule.Of(net, lots, tools, solver);

    private static bool IsIn(Run run, Opening opening) => opening.Worker == run.Worker && opening.Open.Start <= run.Start && run.Start < opening.Open.End;

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
        var rooms = net.Workers[a].SelectMany(w => openings[w])
            .Select(o => (Opening: o, From: Math.Max(from, o.Open.Start + lead), To: Math.Min(to, o.Open.End - rest)))
            .Where(r => r.From <= r.To).OrderBy(r => r.Opening.Rank).ToArray();
        if (rooms.Length == 0)
            return false;
        piece.Start = Model.NewIntVarFromDomain(Domain.FromIntervals([.. rooms.Select(r => new[] { r.From, r.To })]), $"s{a}_{piece.First}");
        piece.Openings = [.. rooms.Select(r => r.Opening)];
        piece.In = [.. rooms.Select(r => Model.NewBoolVar($"in{a}_{piece.First}_{r.Opening.Worker}_{r.Opening.Sitting}"))];
        Model.AddExactlyOne(piece.In);
        Model.Add(piece.Start >= LinearExpr.WeightedSum(piece.In, rooms.Select(r => r.From)));
        Model.Add(piece.Start <= LinearExpr.WeightedSum(piece.In, rooms.Select(r => r.To)));
        AddWorkers(piece);
        return true;
    }

    private void AddWorkers(Piece piece)
    {
        var workers = piece.Openings.Select(o => o.Worker).Distinct().Order().ToArray();
        if (workers.Length == 1)
        {
            piece.Hands = [(workers[0], null)];
            return;
        }

        piece.Hands = [.. workers.Select(w => (w, (BoolVar?)Model.NewBoolVar($"by{piece.Activity}_{piece.First}_{w}")))];
        foreach (var (w, does) in piece.Hands)
            Model.Add(LinearExpr.Sum(piece.Where(o => o.Worker == w)) == does);
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
        Model.Add(piece.HandsFrom >= piece.Opens);
        Model.Add(piece.HandsUntil <= piece.Closes);
    }

    private void AddOrder(Piece before, Piece piece)
    {
        var a = piece.Activity;
        var work = net.Step[a] * before.Units;
        // one worker can set up what the other is still at
        if (piece.IsInSameHands(before))
            Model.Add(piece.HandsFrom >= before.HandsUntil);
        Model.Add(piece.Start >= before.Start + work);
        if (piece.Begins is not { } begins)
            return;
        Model.Add(piece.Start == before.Start + work).OnlyEnforceIf(begins.Not());
        foreach (var opening in before.Openings.Union(piece.Openings))
        {
            var (one, other) = (before.Within(opening), piece.Within(opening));
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
