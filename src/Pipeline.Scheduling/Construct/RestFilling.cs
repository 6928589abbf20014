using System.Numerics;

namespace Pipeline.Scheduling;

/// <summary>Which of some lots, whole or parted, leave the shortest rest in a gap: a knapsack over the gap's ticks.</summary>
internal sealed class RestFilling
{
    private const int MostRoom = 240;
    private const int MostItems = 24;

    private readonly List<(int Key, long SetUp, long PerUnit)> items = [];
    private readonly int[][] taken = new int[MostItems][];
    private float[] worth = [];
    private float[] before = [];
    private long ticksPerCell = 1;
    private int room;

    /// <summary>Starts with an empty gap.</summary>
    public void Begin(long gap)
    {
        items.Clear();
        ticksPerCell = Math.Max(1, (gap + MostRoom - 1) / MostRoom);
        room = (int)(gap / ticksPerCell);
        var size = room + 1 + Vector<float>.Count;
        if (worth.Length < size)
        {
            (worth, before) = (new float[size], new float[size]);
            for (var i = 0; i < MostItems; i++)
                taken[i] = new int[size];
        }

        Array.Clear(worth);
    }

    /// <summary>Adds a lot, the most urgent first; false if there are enough.</summary>
    public bool Add(int key, long setUp, long perUnit, int units)
    {
        var mine = taken[items.Count];
        Array.Clear(mine);
        worth.CopyTo(before, 0);
        for (var n = 1; n <= units; n++)
        {
            var ticks = setUp + (n * perUnit);
            var cells = (int)Math.Min(int.MaxValue / 2, (ticks + ticksPerCell - 1) / ticksPerCell);
            if (cells > room || cells == 0)
                break;
            // a lot that is parted pays its set-up again; of those alike the more urgent
            var value = new Vector<float>(ticks - (n < units ? (2 * setUp) + 1 : 0) + (0.01f * (MostItems - items.Count)));
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
        return items.Count < MostItems;
    }

    /// <summary>The chosen lots with how many units of each, the most urgent first.</summary>
    public List<(int Key, int Units)> Best()
    {
        var chosen = new List<(int, int)>();
        var r = room;
        for (var i = items.Count - 1; i >= 0; i--)
        {
            var (key, setUp, perUnit) = items[i];
            var units = taken[i][r];
            if (units == 0)
                continue;
            chosen.Add((key, units));
            r -= (int)((setUp + (units * perUnit) + ticksPerCell - 1) / ticksPerCell);
        }

        chosen.Reverse();
        return chosen;
    }
}
