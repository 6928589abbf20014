namespace Pipeline.Scheduling;

/// <summary>
/// Anneals the order of runs: a change is tried, and kept if it is better or by luck, the less often the colder it is.
/// Everything follows from the seed and the work it may use.
/// </summary>
internal sealed class Walk
{
    private readonly Ground ground;
    private readonly Pricing pricing;
    private readonly Random random;
    private readonly Retiming retiming;
    private readonly double scale;
    private readonly Moves moves;
    private Sequence sequence = null!;
    private Price price;
    private bool isAtBest;
    private long moved;

    public Walk(Ground ground, Pricing pricing, int seed)
    {
        this.ground = ground;
        this.pricing = pricing;
        random = new Random(seed);
        moves = new Moves(ground, random);
        retiming = new Retiming(ground);
        scale = ground.MeanRun;
    }

    /// <summary>Runs timed; what is only moved about counts a part.</summary>
    public long Work => retiming.Work + (moved / 8);

    public Slot[]? Best { get; private set; }

    public Price BestPrice { get; private set; }

    /// <summary>Starts, or starts again, from a sequence. False if its order cannot be timed.</summary>
    public bool StartFrom(IReadOnlyList<Slot> slots)
    {
        var fresh = slots.ToArray();
        for (var p = 0; p < fresh.Length; p++)
        {
            fresh[p].WorkStart = Timetable.Unset;
            fresh[p].Completion = fresh[p].Holds = 0;
            fresh[p].Changes = 0;
            fresh[p].Finish = long.MinValue;
            fresh[p].HeldInTrial = 0;
        }

        isAtBest = false;
        if (!IsTimed(fresh) && !IsTimedAsItWas(fresh))
            return false;
        price = pricing.Of(sequence);
        if (Best is null || price.IsBetterThan(BestPrice))
        {
            Best = sequence.Snapshot();
            BestPrice = price;
        }

        return true;
    }

    private bool IsTimed(Slot[] slots)
    {
        sequence = new Sequence(ground, slots);
        moved += sequence.Count;
        sequence.Begin();
        return retiming.All(sequence);
    }

    // As early as can be is too early for some waits or places: then nothing starts sooner than it did, as far as need be.
    private bool IsTimedAsItWas(Slot[] slots)
    {
        for (var i = 0; i < slots.Length; i++)
            (slots[i].Delay, slots[i].ToolWish) = (slots[i].Start, slots[i].ToolNumber);
        if (!IsTimed(slots))
            return false;
        for (var p = 0; p < sequence.Count; p++)
        {
            if (sequence.Slots[p].Units == 0)
                continue;
            sequence.Begin();
            sequence.Touch(p);
            sequence.Slots[p].Delay = Slot.NoDelay;
            if (!retiming.From(sequence, p, p + 1))
                sequence.TakeBack();
        }

        return true;
    }

    /// <summary>Walks until the work is used up, cooling down from one temperature to another, in shares of a mean run.</summary>
    public void Run(long work, double hot, double cold, CancellationToken cancel)
    {
        if (sequence.Runs < 2)
            return;
        var begun = Work;
        for (long tries = 0; Work - begun < work; tries++)
        {
            // A trial that is refused before re-timing counts too, so that this always ends.
            moved++;
            if ((tries & 255) == 0 && cancel.IsCancellationRequested)
                break;
            var temperature = scale * hot * Math.Pow(cold / hot, (double)(Work - begun) / work);
            Try(temperature);
        }

        if (isAtBest)
            Note();
    }

    private void Try(double temperature)
    {
        sequence.Begin();
        var (from, to) = moves.Make(sequence);
        if (from < 0)
            return;
        var isTimed = retiming.From(sequence, from, Math.Min(to, sequence.Count));
        moved += sequence.Touched;
        if (!isTimed)
        {
            sequence.TakeBack();
            return;
        }

        var next = pricing.Of(sequence);
        var isBest = next.IsBetterThan(BestPrice);
        if (next.Slope > price.Slope && !isBest && random.NextDouble() >= Math.Exp((price.Slope - next.Slope) / temperature))
        {
            sequence.TakeBack();
            return;
        }

        if (isAtBest && !isBest)
        {
            // The best is about to be left: it is written down first, and this change left out.
            sequence.TakeBack();
            Note();
            return;
        }

        price = next;
        if (!isBest)
            return;
        BestPrice = price;
        isAtBest = true;
    }

    private void Note()
    {
        Best = sequence.Snapshot();
        moved += sequence.Count;
        isAtBest = false;
    }
}
