namespace Pipeline.Scheduling;

/// <summary>
/// How finely two finishes are told apart. Where the hours at hand come in stretches, by the stretch: nobody wants five
/// clean-outs more to put the brush down a minute sooner. Without workers, or in one unbroken stretch, to the tick.
/// </summary>
internal sealed class FinishGrain
{
    // Nobody works for an hour so that something is dry seven hours sooner while nobody is there.
    private const double Closed = 1.0 / 60;

    private readonly List<long> openings = [];
    private readonly List<long> closings = [];

    public FinishGrain(Problem problem)
    {
        var end = long.MinValue;
        foreach (var open in problem.Workers.SelectMany(w => w.Open.Open).OrderBy(o => o.Start))
        {
            if (openings.Count == 0 || open.Start > end)
            {
                openings.Add(open.Start);
                closings.Add(open.End);
            }

            end = closings[^1] = Math.Max(end, open.End);
        }
    }

    /// <summary>
    /// When the stretch opens in which the finish lies; for a finish in closed hours, the stretch before it.
    /// The finish itself where there are no stretches to tell apart.
    /// </summary>
    public long Of(long finish)
    {
        if (openings.Count < 2)
            return finish;
        var i = Stretch(finish);
        return i < 0 ? finish : openings[i];
    }

    /// <summary>How far into its stretch the finish lies, what dries on after it counted little; zero where there are none to tell apart.</summary>
    public double Into(long finish)
    {
        if (openings.Count < 2)
            return 0;
        var i = Stretch(finish);
        return i < 0 ? 0 : Math.Min(finish, closings[i]) - openings[i] + (Closed * Math.Max(0, finish - closings[i]));
    }

    private int Stretch(long finish)
    {
        var i = openings.BinarySearch(finish);
        return (i >= 0 ? i : ~i) - 1;
    }
}
