namespace Pipeline.Scheduling;

/// <summary>How a walk values a sequence: what comes first, and one figure that also says which way is downhill.</summary>
/// <param name="Late">Weighted lateness, hard due times above all.</param>
/// <param name="First">The most important aim.</param>
/// <param name="Next">What tells apart those alike in it.</param>
/// <param name="Slope">Everything together, in open ticks.</param>
internal readonly record struct Price(double Late, double First, double Next, double Slope)
{
    public bool IsBetterThan(Price other) =>
        Late != other.Late ? Late < other.Late
        : First != other.First ? First < other.First
        : Next != other.Next ? Next < other.Next
        : Slope < other.Slope - 1e-9;
}

/// <summary>Prices sequences after the problem's due times and aims.</summary>
internal sealed class Pricing
{
    private const double Hard = 1000;

    /// <summary>A mean of many completions says more about the way than the one finish.</summary>
    public const double UsualCompletionWeight = 2;

    /// <summary>Of few runs it may be lowest where the last one is late.</summary>
    public const double LowCompletionWeight = 0.5;

    /// <summary>What well filled intervals are worth, as a share of the mean completion.</summary>
    public const double PackingWeight = 0.25;

    // One more run is a nuisance even without set-up, in mean runs: a lot is not parted to fill a sitting's last minute.
    private const double PerRun = 0.05;

    private readonly Ground ground;
    private readonly Aim first;
    private readonly double changesWeight;
    private readonly double holdsWeight;
    private readonly double finishWeight;
    private readonly double holdScale;
    private readonly double lateScale;
    private readonly KeptRuns? kept;
    private readonly double keepWeight;
    private readonly FinishGrain grain;
    private readonly double perRun;
    private readonly bool changesFollow;
    private readonly double completionWeight;

    /// <param name="ground">What walks share.</param>
    /// <param name="keep">An earlier schedule that is worth keeping to, or null.</param>
    /// <param name="completionWeight">What the mean completion weighs beside the finish, on the way only.</param>
    public Pricing(Ground ground, Keep? keep, double completionWeight = UsualCompletionWeight)
    {
        this.ground = ground;
        this.completionWeight = completionWeight;
        grain = new FinishGrain(ground.Net.Problem);
        perRun = PerRun * ground.MeanRun;
        var aims = ground.Net.Problem.Aims;
        first = aims.IsEmpty ? Aim.FinishSoon : aims[0];
        changesFollow = first == Aim.FinishSoon && aims.Length > 1 && aims[1] == Aim.FewChanges;
        finishWeight = Weight(aims.IndexOf(Aim.FinishSoon));
        changesWeight = Weight(aims.IndexOf(Aim.FewChanges));
        holdsWeight = Weight(aims.IndexOf(Aim.ShortHolds));
        holdScale = 1 / Math.Max(1, ground.Net.Problem.Waits.Sum(w => w.HoldWeight * ground.Net.Units[w.From]));
        lateScale = 1 / Math.Max(1e-9, ground.Net.Problem.Dues.Select(d => d.WeightPerTick).DefaultIfEmpty(1).Max());
        if (keep is null)
            return;
        kept = new KeptRuns(keep);
        keepWeight = keep.TicksPerMovedRun;
    }

    public Price Of(Sequence sequence)
    {
        double late = 0;
        foreach (var due in ground.Net.Problem.Dues)
        {
            var over = sequence.Starts[ground.Net.Offset[due.Activity + 1] - 1] + ground.Net.Duration[due.Activity] + due.Afterwards - due.By;
            if (over > 0)
                late += over * lateScale * (due.WeightPerTick + (due.IsHard ? Hard : 0));
        }

        var finish = sequence.Finish;
        var moved = kept is null ? 0 : keepWeight * Moved(sequence);
        var work = kept is not null && changesFollow ? sequence.Changes : 0;
        var value = first switch
        {
            Aim.FewChanges => sequence.Changes,
            Aim.ShortHolds => sequence.Holds,
            // with no aim in between, what comes after the sitting is the tick
            _ => (double)(ground.Net.Problem.Aims.Length > 1 ? grain.Of(finish) : finish),
        } + moved + work;
        var next = changesFollow ? grain.Into(finish) + sequence.Changes : 0;
        var slope = (finishWeight * (ground.Clock.At(finish) + (1e-4 * finish) + (completionWeight * sequence.Completion)))
            + (perRun * sequence.Runs)
            + (changesWeight * sequence.Changes)
            + (holdsWeight * sequence.Holds * holdScale)
            + moved
            + late;
        return new Price(late, value, next, slope);
    }

    private double Moved(Sequence sequence)
    {
        double moved = 0;
        for (var p = 0; p < sequence.Count; p++)
        {
            ref var slot = ref sequence.Slots[p];
            if (slot.Units > 0)
                moved += kept!.Moved(slot.Activity, slot.First, slot.Units, slot.Worker, slot.Start);
        }

        return moved;
    }

    private static double Weight(int place) => place switch { 0 => 1, 1 => 1, 2 => 0.01, _ => 0.002 };
}
