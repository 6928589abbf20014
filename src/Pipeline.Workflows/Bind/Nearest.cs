namespace Pipeline.Workflows;

/// <summary>
/// Finds the known name a mistyped one was probably meant to be: least edits (insert, delete, change, swap of two neighbours),
/// at most one for every three letters.
/// </summary>
public sealed class Nearest
{
    /// <summary>Work left, in letters compared, so that a file full of wrong names cannot hold the program up.</summary>
    private long budget = 20_000_000;

    /// <summary>The nearest name, or null if none is near. Of equally near ones, the first in ordinal order.</summary>
    public string? To(string name, IEnumerable<string> known) => Find(name, known).Best;

    /// <summary>The nearest name, and whether no other is as near. Null if none is near.</summary>
    internal (string? Best, bool IsOnly) Find(string name, IEnumerable<string> known)
    {
        if (name.Length > ReadingLimits.LongestName)
            return (null, false);
        var (best, bestEdits, isOnly) = ((string?)null, Math.Clamp(name.Length / 3, 1, 4) + 1, true);
        foreach (var candidate in known)
        {
            if (candidate.Length > ReadingLimits.LongestName || Math.Abs(candidate.Length - name.Length) > bestEdits)
                continue;
            budget -= name.Length * candidate.Length;
            if (budget < 0)
                return (best, false);
            var edits = Edits(name, candidate);
            if (best is not null && candidate != best && edits <= bestEdits)
                isOnly = edits < bestEdits;
            if (edits < bestEdits || (edits == bestEdits && best is not null && string.CompareOrdinal(candidate, best) < 0))
                (best, bestEdits) = (candidate, edits);
        }

        return (best, isOnly);
    }

    /// <summary>Optimal string alignment distance, case ignored (Damerau 1964 and Levenshtein 1966, from memory).</summary>
    internal static int Edits(string from, string to)
    {
        var (before, last, next) = (new int[to.Length + 1], new int[to.Length + 1], new int[to.Length + 1]);
        for (var j = 0; j <= to.Length; j++)
            last[j] = j;
        for (var i = 1; i <= from.Length; i++)
        {
            next[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var cost = Same(from[i - 1], to[j - 1]) ? 0 : 1;
                var edits = Math.Min(Math.Min(next[j - 1], last[j]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && Same(from[i - 1], to[j - 2]) && Same(from[i - 2], to[j - 1]))
                    edits = Math.Min(edits, before[j - 2] + 1);
                next[j] = edits;
            }

            (before, last, next) = (last, next, before);
        }

        return last[to.Length];
    }

    private static bool Same(char left, char right) => char.ToLowerInvariant(left) == char.ToLowerInvariant(right);
}
