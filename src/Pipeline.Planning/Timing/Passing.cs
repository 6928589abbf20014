using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>How long the passes of a step take one after another: coats of which each waits until the one before is recoatable.</summary>
internal static class Passing
{
    /// <summary>Minutes from the finish of one pass on a unit until the next may begin.</summary>
    public static double Between(Step step, Bench bench, Pace pace) =>
        step.Work.Passes == 1 ? 0 : Settling.Minutes(step, DryingState.Recoatable, bench.Climate, pace);

    /// <summary>Minutes from the start of a single unit's first pass to the finish of its last, the hands always free.</summary>
    public static double Minutes(Step step, Bench bench, Pace pace) =>
        (step.Work.Passes * (step.Work.PerUnit.Minutes + step.Work.Unattended.Minutes)) + ((step.Work.Passes - 1) * Between(step, bench, pace));

    /// <summary>
    /// Minutes from the start of the first pass over a lot to that of the last at the low figures: each begins when the first unit is
    /// recoatable, and where nobody else can do it when the hands are done with all of them.
    /// </summary>
    public static double UntilLast(Step step, int units, Bench bench)
    {
        var work = step.Work;
        var dry = work.PerUnit.Minutes + work.Unattended.Minutes + Between(step, bench, Pace.Brisk);
        return (work.Passes - 1) * (bench.Painters.Count > 1 ? dry : Math.Max(dry, work.PassOver(units).Minutes));
    }
}
