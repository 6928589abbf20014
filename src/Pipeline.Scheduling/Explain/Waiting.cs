using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>From when on the waits of a schedule let a run start its work.</summary>
/// <param name="net">The problem.</param>
/// <param name="runs">The schedule.</param>
/// <param name="runOf">The run of each unit.</param>
/// <param name="starts">When each unit starts.</param>
internal sealed class Waiting(Net net, ImmutableArray<Run> runs, int[] runOf, long[] starts)
{
    /// <summary>When the least waits let it start, and which of them is over last; null if it has none.</summary>
    public (long At, Reason.Waits? Waits) Least(int r) => Latest(r, isGreatest: false, _ => true);

    /// <summary>The same, of the waits after some runs alone.</summary>
    public (long At, Reason.Waits? Waits) Least(int r, Func<int, bool> after) => Latest(r, isGreatest: false, after);

    /// <summary>When the greatest waits let it start, and which of them ties it the closest to a run that has to follow; null if none does.</summary>
    public (long At, Reason.Waits? Waits) Tied(int r) => Latest(r, isGreatest: true, _ => true);

    private (long At, Reason.Waits? Waits) Latest(int r, bool isGreatest, Func<int, bool> after)
    {
        var run = runs[r];
        var a = run.Activity;
        var latest = long.MinValue / 4;
        Reason.Waits? waits = null;
        foreach (var arc in net.In[a])
        {
            if (arc.IsGreatest != isGreatest)
                continue;
            if (arc.Whole)
            {
                if (run.FirstUnit == 0 && arc.From != a)
                    Look(arc, 0, net.Offset[arc.From + 1] - 1);
                continue;
            }

            for (var k = 0; k < run.Units; k++)
                Look(arc, k, net.Offset[arc.From] + run.FirstUnit + k);
        }

        return (latest, waits);

        void Look(Arc arc, int k, int from)
        {
            var at = starts[from] + arc.Lag - (k * net.Step[a]);
            if (at <= latest || !after(runOf[from]))
                return;
            latest = at;
            waits = new Reason.Waits(arc.Wait, run.FirstUnit + k, runOf[from]);
        }
    }
}
