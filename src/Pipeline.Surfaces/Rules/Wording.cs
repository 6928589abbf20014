using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Rules;

/// <summary>Puts verdicts together and fills in their areas.</summary>
internal static class Wording
{
    private const string AreasMark = "{areas}";
    private const int MostNamed = 6;

    /// <summary>True if only the areas tell two verdicts of a rule apart.</summary>
    public static bool DifferOnlyInAreas(Verdict one, Verdict other) =>
        one.Step == other.Step
        && one.Message == other.Message
        && one.Remedy == other.Remedy
        && one.GivesWay == other.GivesWay
        && (one, other) switch
        {
            (Verdict.Says left, Verdict.Says right) => left.Level == right.Level,
            (Verdict.Needs left, Verdict.Needs right) => left.Since == right.Since
                && left.SinceStart == right.SinceStart
                && left.ToFinish == right.ToFinish
                && left.Carrier == right.Carrier
                && left.Gravest == right.Gravest
                && left.IsFromLabel == right.IsFromLabel
                && left.For == right.For
                && left.Span == right.Span,
            _ => false,
        };

    /// <summary>One verdict about the areas of both, with the pointers of both.</summary>
    public static Verdict Together(Verdict one, Verdict other)
    {
        var areas = one.Areas;
        foreach (var area in other.Areas)
        {
            if (!areas.Contains(area))
                areas = areas.With(area);
        }

        var related = one.Related;
        foreach (var pointer in other.Related)
        {
            if (!related.Contains(pointer))
                related = related.With(pointer);
        }

        // what would mend one of them only is no mend of both
        return one with { Areas = areas, Related = related, Mend = one.Mend == other.Mend ? one.Mend : null };
    }

    /// <summary>The verdict with its areas named in message and remedy, which begin as sentences do.</summary>
    public static Verdict FillIn(Verdict verdict)
    {
        var message = Sentence(verdict.Message, verdict.Areas);
        var remedy = Sentence(verdict.Remedy, verdict.Areas);
        return ReferenceEquals(message, verdict.Message) && ReferenceEquals(remedy, verdict.Remedy)
            ? verdict
            : verdict with { Message = message, Remedy = remedy };
    }

    /// <summary>The verdict with its areas named in message and remedy, which begin as sentences do.</summary>
    public static BatchVerdict FillIn(BatchVerdict verdict) => verdict with
    {
        Message = Sentence(verdict.Message, verdict.Areas),
        Remedy = Sentence(verdict.Remedy, verdict.Areas),
    };

    /// <summary>Names as people list them: <c>jib, hook and cabin</c>; a long list is cut short with its number.</summary>
    public static string Named(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "the piece",
        1 => names[0],
        <= MostNamed => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
        _ => string.Join(", ", names.Take(MostNamed - 1)) + FormattableString.Invariant($" and {names.Count - MostNamed + 1} more"),
    };

    /// <summary>The first line of a message.</summary>
    public static string OneLine(string message)
    {
        var end = message.AsSpan().IndexOfAny('\r', '\n');
        return end < 0 ? message : message[..end];
    }

    private static string Sentence(string text, Sequence<string> areas)
    {
        if (text.Contains(AreasMark, StringComparison.Ordinal))
            text = text.Replace(AreasMark, Named(areas), StringComparison.Ordinal);
        return text.Length > 0 && char.IsLower(text[0]) ? char.ToUpperInvariant(text[0]) + text[1..] : text;
    }
}
