using Pipeline.Abstractions;

namespace Pipeline.Surfaces;

/// <summary>One cause is one finding: of what one rule says about one step, the gravest speaks for all its areas.</summary>
public static class Sharpest
{
    /// <summary>The findings without those that a graver one of the same rule, step and model covers.</summary>
    public static IEnumerable<Finding> Of(IEnumerable<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var all = findings.ToList();
        var graver = all.Where(finding => finding is { Level: > Level.Note, Rule: not null, Silenced: null }).ToLookup(finding => (finding.Rule, finding.Place, finding.Model));
        return all.Where(finding => !graver[(finding.Rule, finding.Place, finding.Model)].Any(other =>
            other.Level > finding.Level && finding.Silenced is null && finding.Areas.All(other.Areas.Contains)));
    }
}
