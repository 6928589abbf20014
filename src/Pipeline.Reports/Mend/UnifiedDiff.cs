using System.Globalization;
using System.Text;

namespace Pipeline.Reports;

/// <summary>
/// Two texts as a unified diff, which <c>patch</c> and version control read; three lines around each change.
/// </summary>
/// <remarks>
/// Source of the form: POSIX.1-2017, <c>diff -u</c>, and the GNU diffutils manual, "Detailed Description of Unified Format"; from memory.
/// The shortest way from one text to the other is found as in E. W. Myers, "An O(ND) Difference Algorithm and Its Variations",
/// Algorithmica 1 (1986); from memory.
/// </remarks>
public static class UnifiedDiff
{
    private const int Around = 3;

    // beyond this many changed lines the differing middle is shown as one change
    private const int MostChanges = 2_000;

    /// <summary>The diff; empty if the texts are equal.</summary>
    /// <param name="name">The file's name, shown for both.</param>
    /// <param name="before">The text as it was.</param>
    /// <param name="after">The text as it would be.</param>
    public static string Render(string name, string before, string after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before == after)
            return "";
        var (old, now) = (Lines(before), Lines(after));
        var changes = Changes(old, now);
        var diff = new StringBuilder();
        var shown = Visible.Line(name);
        diff.Append(CultureInfo.InvariantCulture, $"--- {shown}\n+++ {shown}\n");
        for (var first = 0; first < changes.Count;)
        {
            var last = first;
            while (last + 1 < changes.Count && changes[last + 1].OldStart - changes[last].OldEnd <= 2 * Around)
                last++;
            Hunk(diff, old, now, changes.GetRange(first, last - first + 1));
            first = last + 1;
        }

        return diff.ToString();
    }

    /// <summary>Lines of the old text that give way to lines of the new; from the first to before the end, from 0.</summary>
    private readonly record struct Change(int OldStart, int OldEnd, int NewStart, int NewEnd);

    private static void Hunk(StringBuilder diff, List<string> old, List<string> now, List<Change> changes)
    {
        var from = Math.Max(0, changes[0].OldStart - Around);
        var to = Math.Min(old.Count, changes[^1].OldEnd + Around);
        var newFrom = changes[0].NewStart - (changes[0].OldStart - from);
        var newTo = changes[^1].NewEnd + (to - changes[^1].OldEnd);
        diff.Append(CultureInfo.InvariantCulture, $"@@ -{Range(from, to)} +{Range(newFrom, newTo)} @@\n");
        var at = from;
        foreach (var change in changes)
        {
            Put(diff, ' ', old, at, change.OldStart);
            Put(diff, '-', old, change.OldStart, change.OldEnd);
            Put(diff, '+', now, change.NewStart, change.NewEnd);
            at = change.OldEnd;
        }

        Put(diff, ' ', old, at, to);
    }

    // a count of one is left out; of an empty range the line before it is named
    private static string Range(int from, int to) => (to - from) switch
    {
        0 => FormattableString.Invariant($"{from},0"),
        1 => FormattableString.Invariant($"{from + 1}"),
        var count => FormattableString.Invariant($"{from + 1},{count}"),
    };

    private static void Put(StringBuilder diff, char sign, List<string> lines, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            diff.Append(sign).Append(lines[i]);
            if (!lines[i].EndsWith('\n'))
                diff.Append("\n\\ No newline at end of file\n");
        }
    }

    private static List<string> Lines(string text)
    {
        var lines = new List<string>();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }

    private static List<Change> Changes(List<string> old, List<string> now)
    {
        var head = 0;
        while (head < old.Count && head < now.Count && old[head] == now[head])
            head++;
        var tail = 0;
        while (tail < old.Count - head && tail < now.Count - head && old[^(tail + 1)] == now[^(tail + 1)])
            tail++;
        var (oldEnd, newEnd) = (old.Count - tail, now.Count - tail);
        return Shortest(old, now, head, oldEnd, newEnd) ?? [new Change(head, oldEnd, head, newEnd)];
    }

    /// <summary>The shortest way, walked back from its end; null if it is longer than is worth looking for.</summary>
    private static List<Change>? Shortest(List<string> old, List<string> now, int head, int oldEnd, int newEnd)
    {
        var (rows, columns) = (oldEnd - head, newEnd - head);
        var most = Math.Min(rows + columns, MostChanges);
        var reached = new int[2 * most + 3];
        var trace = new List<int[]>();
        for (var changes = 0; changes <= most; changes++)
        {
            for (var diagonal = -changes; diagonal <= changes; diagonal += 2)
            {
                var isDown = diagonal == -changes || (diagonal != changes && reached[most + diagonal] < reached[most + diagonal + 2]);
                var x = isDown ? reached[most + diagonal + 2] : reached[most + diagonal] + 1;
                while (x < rows && x - diagonal < columns && old[head + x] == now[head + x - diagonal])
                    x++;
                reached[most + diagonal + 1] = x;
                if (x >= rows && x - diagonal >= columns)
                    return WalkedBack(trace, most, head, rows, columns);
            }

            // of the reached points only those this round could have moved are kept
            trace.Add(reached[(most - changes)..(most + changes + 3)]);
        }

        return null;
    }

    private static List<Change> WalkedBack(List<int[]> trace, int most, int head, int rows, int columns)
    {
        var changes = new List<Change>();
        var (x, y) = (rows, columns);
        for (var count = trace.Count; count > 0; count--)
        {
            var reached = trace[count - 1];
            var diagonal = x - y;
            var isDown = diagonal == -count || (diagonal != count && At(diagonal - 1) < At(diagonal + 1));
            var fromDiagonal = isDown ? diagonal + 1 : diagonal - 1;
            var fromX = At(fromDiagonal);
            var fromY = fromX - fromDiagonal;
            var change = isDown ? new Change(fromX, fromX, fromY, fromY + 1) : new Change(fromX, fromX + 1, fromY, fromY);
            if (changes.Count > 0 && change.OldEnd == changes[^1].OldStart - head && change.NewEnd == changes[^1].NewStart - head)
                changes[^1] = changes[^1] with { OldStart = change.OldStart + head, NewStart = change.NewStart + head };
            else
                changes.Add(new Change(change.OldStart + head, change.OldEnd + head, change.NewStart + head, change.NewEnd + head));
            (x, y) = (fromX, fromY);

            // the row was cut from most - (count - 1) on; diagonal d stood at most + d + 1
            int At(int d) => d < -(count - 1) || d > count - 1 ? -1 : reached[d + count];
        }

        changes.Reverse();
        return changes;
    }
}
