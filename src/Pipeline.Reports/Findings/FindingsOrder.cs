using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>The order in which findings are shown, and what they are called.</summary>
internal static class FindingsOrder
{
    /// <summary>The gravest first, then by place. Equal findings keep their order.</summary>
    public static IEnumerable<Finding> GravestFirst(this IEnumerable<Finding> findings) =>
        findings.OrderByDescending(f => f.Level).ThenBy(f => f.Place);

    /// <summary>Those that speak.</summary>
    public static IEnumerable<Finding> Speaking(this IEnumerable<Finding> findings) => findings.Where(f => f.Silenced is null);

    /// <summary>Those the painter has silenced.</summary>
    public static IEnumerable<Finding> Silent(this IEnumerable<Finding> findings) => findings.Where(f => f.Silenced is not null);

    /// <summary>The level's word.</summary>
    public static string Word(this Level level) => level switch
    {
        Level.Error => "error",
        Level.Warning => "warning",
        _ => "note",
    };

    /// <summary>The level's tone.</summary>
    public static Tone Tone(this Level level) => level switch
    {
        Level.Error => Reports.Tone.Error,
        Level.Warning => Reports.Tone.Warning,
        _ => Reports.Tone.Strong,
    };

    /// <summary>How many of each level: <c>1 error, 2 warnings</c>.</summary>
    public static string Counted(IReadOnlyCollection<Finding> findings)
    {
        var counts = new[] { Level.Error, Level.Warning, Level.Note }
            .Select(level => (Count: findings.Count(f => f.Level == level), Word: level.Word()))
            .Where(c => c.Count > 0)
            .Select(c => FormattableString.Invariant($"{c.Count} {c.Word}{(c.Count == 1 ? "" : "s")}"));
        return string.Join(", ", counts);
    }
}
