namespace Pipeline.Scheduling;

/// <summary>
/// Fills a timetable sitting after sitting, as a painter would. It can be filled again in another way from some sitting on, and
/// that kept or taken back.
/// </summary>
internal sealed class SittingFiller
{
    // Marks take room and time: there are about so many in a plan.
    private const int Marks = 24;

    // Putting a run back where it was takes so much less than finding a place for it.
    private const int PutBackPerPlacement = 8;

    private readonly Dispatcher dispatcher;
    private readonly OneSitting? sitting;
    private readonly (int Worker, int Sitting)[] order;
    private readonly int[] readyIn;
    private readonly List<(int Number, OneSitting.Standing At)> marks = [];
    private readonly List<(int Number, OneSitting.Standing At)> newMarks = [];
    private readonly List<Placed> kept = [];
    private int sittings;
    private int common;
    private int filled;

    /// <param name="net">The problem.</param>
    /// <param name="components">Its groups.</param>
    /// <param name="dispatcher">Puts in what is tied or left over.</param>
    /// <param name="horizon">The key of what is least urgent.</param>
    public SittingFiller(Net net, Components components, Dispatcher dispatcher, double horizon)
    {
        this.dispatcher = dispatcher;
        Table = new Timetable(net);
        order = [.. Enumerable.Range(0, Table.Sittings.Length)
            .SelectMany(w => Enumerable.Range(0, Table.Sittings[w].Length).Select(d => (Worker: w, Sitting: d, Table.Sittings[w][d].Start)))
            .OrderBy(d => d.Start).ThenBy(d => d.Worker).Select(d => (d.Worker, d.Sitting))];
        sittings = order.Length;
        readyIn = new int[components.Groups.Length];
        if (!dispatcher.PutPinned(Table, new Fitting(Table)))
            return;
        sitting = new OneSitting(net, components, dispatcher, Table, horizon);
        marks.Add((0, sitting.Mark()));
    }

    public Timetable Table { get; }

    /// <summary>The first sitting in which it matters how urgent a group is.</summary>
    public int FirstOf(int group) => readyIn[group];

    /// <summary>
    /// Fills the sittings in another way from one on; those before are as they were kept. False if not everything could be put in.
    /// </summary>
    public bool Fill(Filling how, int from)
    {
        if (sitting is null)
            return false;
        common = marks.FindLastIndex(m => m.Number <= from);
        newMarks.Clear();
        var every = Math.Max(1, sittings / Marks);
        sitting.BackTo(marks[common].At);
        sitting.Use(how);
        var number = marks[common].Number;
        for (; number < order.Length && sitting.HasMore; number++)
        {
            if (number % every == 0 && number > marks[common].Number)
                newMarks.Add((number, sitting.Mark()));
            sitting.Fill(order[number].Worker, order[number].Sitting, number);
        }

        sittings = number;
        filled = Table.Runs.Count;
        return dispatcher.Complete(Table, new Dispatch(how.Keys, 0.5)) is not null;
    }

    /// <summary>What was filled last is kept.</summary>
    public void Keep()
    {
        marks.RemoveRange(common + 1, marks.Count - common - 1);
        marks.AddRange(newMarks);
        sitting!.ReadyIn.CopyTo(readyIn, 0);
        var first = marks[common].At.Runs;
        kept.RemoveRange(first - marks[0].At.Runs, kept.Count - first + marks[0].At.Runs);
        kept.AddRange(Table.Runs[first..filled]);
    }

    /// <summary>What was filled last is taken back.</summary>
    public void TakeBack()
    {
        var first = marks[common].At.Runs;
        Table.TakeOutAfter(first);
        for (var i = first - marks[0].At.Runs; i < kept.Count; i++)
            Table.PutAgain(kept[i]);
        Table.Work += (Table.Runs.Count - first) / PutBackPerPlacement;
        readyIn.CopyTo(sitting!.ReadyIn, 0);
    }
}
