using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Which cautions a page has told in full: each is told once, where it is first needed, and named afterwards.</summary>
internal sealed class CautionsTold
{
    private readonly HashSet<string> told = new(StringComparer.Ordinal);

    /// <summary>The cautions of a sitting: those new on the page, and the names of those told before.</summary>
    public (IReadOnlyList<Caution> New, IReadOnlyList<string> Known) Of(PlannedSitting sitting)
    {
        var news = new List<Caution>();
        var known = new List<string>();
        foreach (var caution in sitting.Cautions)
        {
            if (told.Add(caution.Name))
                news.Add(caution);
            else
                known.Add(Amounts.Words(caution.Name));
        }

        return (news, known);
    }
}
