using System.Numerics;

namespace Pipeline.Scheduling;

/// <summary>
/// The longest way from the start of every task to the start of every other through least and greatest waits:
/// start(j) ≥ start(i) + way(i, j). Also seen from the end, where a task starts at its finish.
/// </summary>
internal sealed class LongestWays
{
    /// <summary>There is no way; far from overflow when times are added.</summary>
    public const int None = int.MinValue / 4;

    private readonly int[] duration;

    public LongestWays(Tasks tasks)
    {
        duration = [.. tasks.Duration.Select(d => (int)d)];
        From = Matrix(tasks.Count);
        for (var i = 0; i < tasks.Count; i++)
            From[i][i] = 0;
        foreach (var arc in tasks.Arcs)
            From[arc.From][arc.To] = Math.Max(From[arc.From][arc.To], (int)arc.Lag);
        for (var k = 0; k < tasks.Count; k++)
        {
            for (var i = 0; i < tasks.Count; i++)
            {
                if (From[i][k] > None)
                    Raise(From[i], From[k], From[i][k]);
            }
        }

        Clip();
        To = Transposed(From);
        NotBefore = [.. Enumerable.Range(0, tasks.Count).Select(j =>
            Enumerable.Range(0, tasks.Count).Where(i => From[i][j] > None).Max(i => (int)tasks.Net[i].NotBefore + From[i][j])).Select(t => Math.Max(0, t))];
    }

    private LongestWays(int[] duration, int[][] from)
    {
        this.duration = duration;
        From = from;
        To = Transposed(from);
        NotBefore = [.. To.Select(ways => Math.Max(0, ways.Max()))];
    }

    /// <summary>Per task the ways from its start to every other.</summary>
    public int[][] From { get; }

    /// <summary>Per task the ways from every other start to its own.</summary>
    public int[][] To { get; }

    /// <summary>Per task the earliest start that waits allow.</summary>
    public int[] NotBefore { get; }

    /// <summary>Whether waits alone keep the start of the one from being after the other's.</summary>
    public bool IsBefore(int one, int other) => one != other && (From[one][other] > 0 || (From[one][other] == 0 && From[other][one] < 0));

    /// <summary>The longest way from a start to a finish.</summary>
    public long ToEnd(int task) => Enumerable.Range(0, duration.Length).Max(j => (long)From[task][j] + duration[j]);

    /// <summary>The same ways counted from the end: a task starts at its finish and waits point backwards.</summary>
    public LongestWays Mirrored()
    {
        var from = Matrix(duration.Length);
        for (var i = 0; i < duration.Length; i++)
        {
            for (var j = 0; j < duration.Length; j++)
                from[j][i] = From[i][j] == None ? None : From[i][j] + duration[j] - duration[i];
        }

        return new LongestWays(duration, from);
    }

    /// <summary>Raises every value to what the way adds to a time.</summary>
    public static void Raise(int[] values, int[] ways, int time)
    {
        var step = Vector<int>.Count;
        var k = 0;
        for (var add = new Vector<int>(time); k <= values.Length - step; k += step)
            Vector.Max(new Vector<int>(values, k), new Vector<int>(ways, k) + add).CopyTo(values, k);
        for (; k < values.Length; k++)
            values[k] = Math.Max(values[k], ways[k] + time);
    }

    /// <summary>Lowers every value to what the way takes from a time.</summary>
    public static void Lower(int[] values, int[] ways, int time)
    {
        var step = Vector<int>.Count;
        var k = 0;
        for (var from = new Vector<int>(time); k <= values.Length - step; k += step)
            Vector.Min(new Vector<int>(values, k), from - new Vector<int>(ways, k)).CopyTo(values, k);
        for (; k < values.Length; k++)
            values[k] = Math.Min(values[k], time - ways[k]);
    }

    private static int[][] Matrix(int count)
    {
        var rows = new int[count][];
        for (var i = 0; i < count; i++)
        {
            rows[i] = new int[count];
            Array.Fill(rows[i], None);
        }

        return rows;
    }

    // A sum with no way in it is still no way.
    private void Clip()
    {
        foreach (var row in From)
        {
            for (var j = 0; j < row.Length; j++)
                row[j] = row[j] < None / 2 ? None : row[j];
        }
    }

    private static int[][] Transposed(int[][] rows)
    {
        var columns = Matrix(rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j < rows.Length; j++)
                columns[j][i] = rows[i][j];
        }

        return columns;
    }
}
