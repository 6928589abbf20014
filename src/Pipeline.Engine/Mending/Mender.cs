using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Texts before and after mending.</summary>
/// <param name="Before">What checking the texts as they were gave.</param>
/// <param name="After">What checking them as they are now gave.</param>
/// <param name="Made">The findings whose mends were made, as they stood when they were made.</param>
public sealed record Mended(Checked Before, Checked After, Sequence<Finding> Made);

/// <summary>
/// Makes the mends that findings carry, and checks after each round: a mend that does not make its finding go, or brings a new one, is
/// taken back. Mends that touch each other are made one after the other. Comes to an end: each round makes the findings fewer. Pure.
/// </summary>
public static class Mender
{
    // each attempt checks the whole batch again; a file full of mistakes must not hold the program up
    private const int MostAttempts = 100;

    // what an editor waits for while somebody types: so many steps walked again in all
    private const int MostStepsAgain = 100_000;

    /// <summary>Mends texts, taken together as one batch.</summary>
    public static Mended Mend(Sequence<SourceText> texts, Trade trade)
    {
        var before = Stages.Check(texts, trade);
        var done = before;
        var made = new List<Finding>();
        var refused = new HashSet<(string?, string, string)>();
        for (var attempts = 0; attempts < MostAttempts; attempts++)
        {
            var chosen = Chosen(done, refused);
            if (chosen.Count == 0)
                break;
            if (Tried(done, chosen, trade) is { } together)
            {
                done = together;
                made.AddRange(chosen);
                continue;
            }

            // one of them is at fault: make the first that is sound by itself
            foreach (var alone in chosen)
            {
                if (chosen.Count > 1 && ++attempts < MostAttempts && Tried(done, [alone], trade) is { } better)
                {
                    done = better;
                    made.Add(alone);
                    break;
                }

                refused.Add(Key(alone));
            }
        }

        return new Mended(before, done, made.ToSequence());
    }

    /// <summary>
    /// What was found, with the changes to the texts that mend each finding. Each change has been tried alone: it makes its finding go and
    /// brings no other. Of very many in a very large batch only the first are tried; the rest come without.
    /// </summary>
    public static Sequence<Finding> WithSoundEdits(Checked done, Trade trade)
    {
        ArgumentNullException.ThrowIfNull(done);
        var room = MostStepsAgain;
        var steps = done.Walked?.Routes.Sum(route => route.Moments.Count) ?? done.Texts.Sum(text => text.Text.Count(letter => letter == '\n'));
        return Stages.WithEdits(done.Texts, done.Findings)
            .Select(finding => finding.Edits.IsEmpty || IsSound(finding) ? finding : finding with { Edits = [] })
            .ToSequence();

        bool IsSound(Finding finding)
        {
            room -= steps + 1;
            return room >= 0 && Tried(done, [finding], trade) is not null;
        }
    }

    /// <summary>As many findings with their edits as can be mended in one go, in file order.</summary>
    private static List<Finding> Chosen(Checked done, HashSet<(string?, string, string)> refused)
    {
        var chosen = new List<Finding>();
        var open = done.Findings.Where(finding => finding is { Mend: not null, Silenced: null } && !refused.Contains(Key(finding)));
        foreach (var finding in Stages.WithEdits(done.Texts, open.ToSequence()))
        {
            if (!finding.Edits.IsEmpty && !chosen.Exists(other => Editing.Touch(other.Edits, finding.Edits)))
                chosen.Add(finding);
        }

        return chosen;
    }

    private static Checked? Tried(Checked done, List<Finding> chosen, Trade trade)
    {
        var texts = done.Texts.Select(text =>
        {
            var edits = chosen.SelectMany(finding => finding.Edits).Where(edit => edit.From.File == text.Name).OrderBy(edit => edit.From).ToList();
            return edits.Count == 0 ? text : Editing.Apply(text, edits);
        });
        var after = Stages.Check(texts.ToSequence(), trade);
        return IsBetter(done, after) ? after : null;
    }

    /// <summary>
    /// True if fewer findings speak and none is new: no rule speaks more often than before, nor above a note of areas of which it was silent.
    /// While a file cannot be understood no rule is asked, so that what rules say once it can is not new.
    /// </summary>
    private static bool IsBetter(Checked before, Checked after)
    {
        if (before.Walked is not null && after.Walked is null)
            return false;
        var isFirstWalk = before.Walked is null && after.Walked is not null;
        var had = Counts(before, isFirstWalk);
        var has = Counts(after, isFirstWalk);
        return has.Values.Sum() < had.Values.Sum()
            && has.All(each => each.Value <= had.GetValueOrDefault(each.Key))
            && (isFirstWalk || after.Findings.All(finding => finding.Silenced is not null || finding.Level == Level.Note || WasSaid(before, finding)));
    }

    private static bool WasSaid(Checked before, Finding finding) => before.Findings.Any(earlier =>
        earlier.Silenced is null && earlier.Rule == finding.Rule && earlier.Level == finding.Level && finding.Areas.All(earlier.Areas.Contains));

    private static Dictionary<(string, Level), int> Counts(Checked done, bool readingOnly) => done.Findings
        .Where(finding => finding.Silenced is null && !(readingOnly && (finding.Rule is not null || finding.Level != Level.Error)))
        .GroupBy(finding => (finding.Rule ?? finding.Message, finding.Level))
        .ToDictionary(group => group.Key, group => group.Count());

    private static (string?, string, string) Key(Finding finding) => (finding.Rule, finding.Message, finding.Mend!.GetType().Name);
}
