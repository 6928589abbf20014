namespace Pipeline.Scheduling;

/// <summary>
/// A genetic search over lists of tasks: two members of a herd are crossed, the child is scheduled and ironed out, and takes the
/// place of one that is no better.
/// </summary>
internal sealed class Breeding
{
    // Of so many drawn members the worst makes room.
    private const int Drawn = 5;

    // After so many children per member without a better best the herd is bred through.
    private const int BredThrough = 150;

    private readonly Tasks tasks;
    private readonly TaskOrder order;
    private readonly IListScheme scheme;
    private readonly Ironing ironing;
    private readonly Crossing crossing;
    private readonly Random random;
    private readonly int size;
    private readonly List<Member> herd = [];
    private int founders;
    private long childrenSinceBetter;

    /// <param name="tasks">The project.</param>
    /// <param name="order">What its lists have to keep.</param>
    /// <param name="scheme">Makes schedules; for this herd alone.</param>
    /// <param name="size">Members; the more work there is, the more of them are worth while.</param>
    /// <param name="seed">Starts the random numbers.</param>
    public Breeding(Tasks tasks, TaskOrder order, IListScheme scheme, int size, int seed)
    {
        this.tasks = tasks;
        this.order = order;
        this.scheme = scheme;
        this.size = size;
        random = new Random(seed);
        ironing = new Ironing(tasks, order, scheme);
        crossing = new Crossing(tasks, order, random);
    }

    public Member? Best { get; private set; }

    /// <summary>Elementary steps done.</summary>
    public long Work => scheme.Work;

    /// <summary>Goes on until so much more work is done, or the finish meets the bound.</summary>
    public void Run(long work, long bound, CancellationToken cancel)
    {
        var until = scheme.Work + work;
        while (scheme.Work < until && (Best is null || Best.Finish > bound) && !cancel.IsCancellationRequested)
        {
            if (founders < size || herd.Count == 0)
                Found();
            else if (childrenSinceBetter > BredThrough * size)
                StartAfresh();
            else
                Breed();
        }
    }

    /// <summary>Takes somebody else's schedule into the herd.</summary>
    public void Welcome(long[] starts) => Join(new Member(ironing.ByStart(starts), starts, tasks.Finish(starts)));

    private void Found()
    {
        founders++;
        Join(ironing.Of(order.Sample(random)));
    }

    private void StartAfresh()
    {
        childrenSinceBetter = 0;
        founders = 0;
        herd.Clear();
        if (random.Next(2) == 0)
            herd.Add(Best!);
    }

    private void Breed()
    {
        var child = crossing.Cross(Pick(), Pick());
        crossing.Mutate(child);
        Join(ironing.Of(child));
    }

    private Member Pick()
    {
        var x = herd[random.Next(herd.Count)];
        var y = herd[random.Next(herd.Count)];
        return x.Finish <= y.Finish ? x : y;
    }

    private void Join(Member? member)
    {
        childrenSinceBetter++;
        if (member is null)
            return;
        if (Best is null || member.Finish < Best.Finish)
        {
            Best = member;
            childrenSinceBetter = 0;
        }

        if (herd.Count < size)
        {
            herd.Add(member);
            return;
        }

        var worst = random.Next(herd.Count);
        for (var i = 1; i < Drawn; i++)
        {
            var other = random.Next(herd.Count);
            if (herd[other].Finish > herd[worst].Finish)
                worst = other;
        }

        if (member.Finish <= herd[worst].Finish && !herd.Exists(m => m.Finish == member.Finish && m.Starts.AsSpan().SequenceEqual(member.Starts)))
            herd[worst] = member;
    }
}
