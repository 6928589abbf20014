using System.Numerics;

namespace Pipeline.Scheduling;

/// <summary>Which of some lots, whole or parted, are worth most in a gap: a knapsack over the gap's ticks.</summary>
/// <param name="grain">All times are multiples of so many ticks.</param>
internal sealed class Knapsack(long grain)
{
    /// <summary>So many lots at most are looked at.</summary>
    public const int MostItems = 36;

    private const int MostCells = 480;

    private readonly List<(int Key, long SetUp, long PerUnit)> items = [];
    private readonly int[][] taken = new int[MostItems][];
    private float[] worth = [];
    private float[] before = [];
    private float[] marked = [];
    private int markedItems;
    private long ticksPerCell = 1;
    private int room;

    /// <summary>How finely the gap is counted.</summary>
    public int Fineness => room;

    /// <summary>How many lots it looks at.</summary>
    public int Count => items.Count;

    /// <summary>Starts with an empty gap of at most so many ticks.</summary>
    public void Begin(long gap)
    {
        items.Clear();
        ticksPerCell = grain * Math.Max(1, (gap + (grain * MostCells) - 1) / (grain * MostCells));
        room = (int)(gap / ticksPerCell);
        var size = room + 1 + Vector<float>.Count;
        if (worth.Length < size)
        {
            (worth, before, marked) = (new float[size], new float[size], new float[size]);
            for (var i = 0; i < MostItems; i++)
                taken[i] = new int[size];
        }

        Array.Clear(worth);
    }

    /// <summary>
    /// Adds a lot of so many units, of which each tick is worth so much. The set-up is worth nothing if the lot is parted.
    /// </summary>
    public void Add(int key, long setUp, long perUnit, int units, bool isWhole, double worthPerTick)
    {
        var mine = taken[items.Count];
        Array.Clear(mine);
        worth.CopyTo(before, 0);
        for (var n = isWhole ? units : 1; n <= units; n++)
        {
            var cells = Cells(setUp + (n * perUnit));
            if (cells > room || cells == 0)
                break;
            var value = new Vector<float>((float)(worthPerTick * ((n * perUnit) + (n == units ? setUp : 0))));
            var some = new Vector<int>(n);
            for (var r = cells; r <= room; r += Vector<float>.Count)
            {
                var with = new Vector<float>(before, r - cells) + value;
                var without = new Vector<float>(worth, r);
                var isBetter = Vector.GreaterThan(with, without);
                Vector.ConditionalSelect(isBetter, with, without).CopyTo(worth, r);
                Vector.ConditionalSelect(isBetter, some, new Vector<int>(mine, r)).CopyTo(mine, r);
            }
        }

        items.Add((key, setUp, perUnit));
    }

    /// <summary>Remembers what has been added so far.</summary>
    public void Mark()
    {
        worth.CopyTo(marked, 0);
        markedItems = items.Count;
    }

    /// <summary>Forgets what has been added since.</summary>
    public void BackToMark()
    {
        marked.CopyTo(worth, 0);
        items.RemoveRange(markedItems, items.Count - markedItems);
    }

    /// <summary>What the best choice for a gap of so many ticks is worth.</summary>
    public double WorthOf(long gap) => gap < 0 ? 0 : worth[gap / ticksPerCell];

    /// <summary>The best choice for a gap of so many ticks: lots with how many units of each, in the order in which they were added.</summary>
    public void Choose(long gap, List<(int Key, int Units)> chosen)
    {
        chosen.Clear();
        var r = (int)(gap / ticksPerCell);
        for (var i = items.Count - 1; i >= 0; i--)
        {
            var (key, setUp, perUnit) = items[i];
            var units = taken[i][r];
            if (units == 0)
                continue;
            chosen.Add((key, units));
            r -= Cells(setUp + (units * perUnit));
        }

        chosen.Reverse();
    }

    private int Cells(long ticks) => (int)Math.Min(int.MaxValue / 2, (ticks + ticksPerCell - 1) / ticksPerCell);
}
