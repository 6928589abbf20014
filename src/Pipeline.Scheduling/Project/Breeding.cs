using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>
/// A genetic search over lists of tasks: two members of a herd are crossed, the child is scheduled and ironed out, and takes the
/// place of one that is no better. A herd that is bred through makes way for a larger one of new blood, which agrees later and,
/// more often than not, on something else (restarts with growing populations, Auger and Hansen 2005).
/// </summary>
internal sealed class Breeding
{
    // Of so many drawn members the worst makes room.
    private const int Drawn = 5;

    // After so many children per member without one better than all of the herd, it is bred through: its members are much alike.
    private const int BredThrough = 20;

    // Beyond, no herd comes to agree.
    private const int MostMembers = 6000;

    private readonly Tasks tasks;
    private readonly TaskOrder order;
    private readonly IListScheme scheme;
    private readonly Ironing ironing;
    private readonly Crossing crossing;
    private readonly Random random;
    private readonly List<Member> herd = [];
    private readonly HashSet<Member> known = new(new SameStarts());
    private int size;
    private int founders;
    private long herdsBest = long.MaxValue;
    private long childrenSinceBetter;

    /// <param name="tasks">The project.</param>
    /// <param name="order">What its lists have to keep.</param>
    /// <param name="scheme">Makes schedules; for this herd alone.</param>
    /// <param name="size">Members at first; the more work there is, the more of them are worth while.</param>
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

    /// <summary>The best there has been, in this herd or one before it.</summary>
    public Member? Best { get; private set; }

    /// <summary>Those that are bred from now; no two start all tasks alike.</summary>
    public IReadOnlyList<Member> Members => herd;

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
        herdsBest = long.MaxValue;
        founders = 0;
        herd.Clear();
        known.Clear();
        size = Math.Min(MostMembers, 2 * size);
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
            Best = member;
        if (member.Finish < herdsBest)
            (herdsBest, childrenSinceBetter) = (member.Finish, 0);
        if (known.Contains(member))
            return;
        if (herd.Count < size)
            herd.Add(member);
        else if (Worst() is var worst && member.Finish <= herd[worst].Finish)
        {
            known.Remove(herd[worst]);
            herd[worst] = member;
        }
        else
            return;
        known.Add(member);
    }

    private int Worst()
    {
        var worst = random.Next(herd.Count);
        for (var i = 1; i < Drawn; i++)
        {
            var other = random.Next(herd.Count);
            if (herd[other].Finish > herd[worst].Finish)
                worst = other;
        }

        return worst;
    }

    private sealed class SameStarts : IEqualityComparer<Member>
    {
        public bool Equals(Member? x, Member? y) => x!.Starts.AsSpan().SequenceEqual(y!.Starts);

        public int GetHashCode(Member member)
        {
            var hash = default(HashCode);
            hash.AddBytes(MemoryMarshal.AsBytes(member.Starts.AsSpan()));
            return hash.ToHashCode();
        }
    }
}
