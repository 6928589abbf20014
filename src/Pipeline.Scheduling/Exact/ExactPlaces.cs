using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>
/// The places of the exact model. Of the stays of one piece in a place, one that begins while another runs may join it, and then prolongs
/// it instead of being counted. Stays that overlap can always be joined, so the model asks for just as much room as the pieces take.
/// </summary>
internal sealed class ExactPlaces
{
    private readonly CpModel model;
    private readonly Net net;
    private readonly Func<int, int, LinearExpr> at;
    private readonly (long[] Earliest, long[] Latest) starts;
    private readonly List<IntervalVar> intervals = [];
    private readonly List<long> amounts = [];

    private ExactPlaces(CpModel model, Net net, Func<int, int, LinearExpr> at, (long[] Earliest, long[] Latest) starts)
    {
        this.model = model;
        this.net = net;
        this.at = at;
        this.starts = starts;
    }

    private readonly record struct UnitStay(int Activity, int Unit, Stay Stay, LinearExpr Start, long Earliest, long Latest);

    /// <param name="model">To which they are added.</param>
    /// <param name="net">A problem that the model covers.</param>
    /// <param name="at">The own start of a unit of an activity.</param>
    /// <param name="starts">No unit's own work starts sooner, and none later.</param>
    public static void Add(CpModel model, Net net, Func<int, int, LinearExpr> at, (long[] Earliest, long[] Latest) starts)
    {
        for (var p = 0; net.HasStays && p < net.Problem.Places.Length; p++)
            new ExactPlaces(model, net, at, starts).Add(p);
    }

    private void Add(int place)
    {
        var alone = -1;
        var pieces = PlaceStays.In(net, place).SelectMany(s => Enumerable.Range(0, net.Units[s.Activity]).Select(k => Of(s.Activity, k, s.Stay)))
            .GroupBy(s => s.Stay.MayOverlap ? s.Stay.FirstPiece + s.Unit : alone--);
        foreach (var piece in pieces)
            AddPiece([.. piece]);
        if (amounts.Count > 0)
            model.AddCumulative((long)net.Problem.Places[place].Capacity).AddDemands(intervals, amounts);
    }

    private UnitStay Of(int a, int unit, Stay stay)
    {
        var u = net.Offset[a] + unit;
        if (unit >= net.Done[a])
            return new UnitStay(a, unit, stay, at(a, unit), starts.Earliest[u], starts.Latest[u]);
        var run = net[a].Past.First(r => unit < r.FirstUnit + r.Units);
        var start = run.WorkStart + ((unit - run.FirstUnit) * net.Step[a]);
        return new UnitStay(a, unit, stay, LinearExpr.Constant(start), start, start);
    }

    private void AddPiece(UnitStay[] stays)
    {
        var untils = new IntVar?[stays.Length];
        var joined = new List<ILiteral>[stays.Length];
        var latest = stays.Max(s => s.Latest + s.Stay.Length);
        for (var i = 0; i < stays.Length; i++)
        {
            joined[i] = [];
            if (stays.Where((other, j) => j != i && MayJoin(other, stays[i])).Any())
            {
                untils[i] = model.NewIntVar(stays[i].Earliest + stays[i].Stay.Length, latest, Name("until", stays[i]));
                model.Add(untils[i]! >= stays[i].Start + stays[i].Stay.Length);
            }
        }

        for (var i = 0; i < stays.Length; i++)
        {
            for (var j = 0; j < stays.Length; j++)
            {
                if (j == i || !MayJoin(stays[i], stays[j]))
                    continue;
                var joins = model.NewBoolVar(Name($"joins{stays[j].Activity}", stays[i]));
                joined[i].Add(joins);
                // of two that begin at once only the later one joins, so that one of them is counted
                model.Add(stays[i].Start >= stays[j].Start + (j < i ? 0 : 1)).OnlyEnforceIf(joins);
                model.Add(untils[j]! >= (untils[i] ?? stays[i].Start + stays[i].Stay.Length)).OnlyEnforceIf(joins);
            }

            Count(stays[i], untils[i], latest, joined[i]);
        }
    }

    private void Count(UnitStay stay, IntVar? until, long latest, List<ILiteral> joins)
    {
        ILiteral isCounted = model.TrueLiteral();
        if (joins.Count > 0)
        {
            isCounted = model.NewBoolVar(Name("leads", stay));
            model.AddExactlyOne([isCounted, .. joins]);
        }

        amounts.Add(stay.Stay.Amount);
        if (until is null)
        {
            intervals.Add(joins.Count == 0
                ? model.NewFixedSizeIntervalVar(stay.Start, stay.Stay.Length, Name("stay", stay))
                : model.NewOptionalFixedSizeIntervalVar(stay.Start, stay.Stay.Length, isCounted, Name("stay", stay)));
            return;
        }

        var size = model.NewIntVar(stay.Stay.Length, latest - stay.Earliest, Name("size", stay));
        intervals.Add(model.NewOptionalIntervalVar(stay.Start, size, until, isCounted, Name("stay", stay)));
    }

    // Whether the one could begin while the other runs.
    private bool MayJoin(in UnitStay one, in UnitStay other)
    {
        if (one.Latest < other.Earliest || one.Earliest >= other.Latest + other.Stay.Length)
            return false;
        foreach (var arc in net.Out[other.Activity])
        {
            if (arc.To == one.Activity && arc.Lag >= other.Stay.Length)
                return false;
        }

        return true;
    }

    private static string Name(string what, in UnitStay stay) => $"{what}{stay.Activity}_{stay.Unit}_{stay.Stay.Place}";
}
