using Pipeline.Abstractions;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>
/// Findings for people and for the tools around them: the GNU form <c>file:line:column: level: message [rule]</c>,
/// the remedy and related places on indented lines, silenced findings as a short list with their reasons, and a closing count.
/// </summary>
/// <remarks>Source of the form: GNU Coding Standards, "Formatting Error Messages"; quoted from memory.</remarks>
public static class FindingsText
{
    /// <summary>The findings as text. Empty if there are none.</summary>
    /// <param name="findings">In any order; shown gravest first, then by place.</param>
    /// <param name="sources">The text of each file by the name used in <see cref="Place.File"/>; files may be missing.</param>
    /// <param name="style">How it is set. First lines of findings are never broken, so that tools can read them.</param>
    public static string Render(Sequence<Finding> findings, IReadOnlyDictionary<string, string> sources, TextStyle style) =>
        Set(findings, sources, style).ToString();

    /// <summary>Puts the findings on a console, as it suits it.</summary>
    public static void Write(Sequence<Finding> findings, IReadOnlyDictionary<string, string> sources, IAnsiConsole console) =>
        Set(findings, sources, TextStyle.For(console)).WriteTo(console);

    internal static Page Set(Sequence<Finding> findings, IReadOnlyDictionary<string, string> sources, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        var lines = new SourceLines(sources);
        var speaking = findings.Speaking().GravestFirst().ToList();
        var silent = findings.Silent().GravestFirst().ToList();
        foreach (var finding in speaking)
            SetFinding(page, finding, lines);
        if (speaking.Count > 0)
        {
            var files = speaking.Select(f => f.Place.File).Distinct().Count();
            page.Blank();
            page.Line(FormattableString.Invariant($"{FindingsOrder.Counted(speaking)}{(files > 1 ? $" in {files} files" : "")}."));
        }

        SetSilent(page, silent);
        return page;
    }

    private static void SetFinding(Page page, Finding finding, SourceLines lines)
    {
        var rule = finding.Rule is null ? "" : $" [{Visible.Line(finding.Rule)}]";
        page.Line(
            $"{Visible.Line(finding.Place.ToString())}: ",
            new Run($"{finding.Level.Word()}:", finding.Level.Tone()),
            $" {Visible.Line(finding.Message)}",
            new Run(rule, Tone.Quiet));
        if (page.Style.WithSource)
            SetSource(page, finding.Place, lines);
        if (finding.Remedy is { Length: > 0 } remedy)
            page.Hung(new Run("    do: ", Tone.Quiet), Visible.Line(remedy));
        foreach (var related in finding.Related)
            page.Hung(new Run("    see: ", Tone.Quiet), $"{Visible.Line(related.Place.ToString())}: {Visible.Line(related.Message)}");
    }

    private static void SetSource(Page page, Place place, SourceLines lines)
    {
        if (lines.Line(place.File, place.Line) is not { } line)
            return;
        var number = FormattableString.Invariant($"{place.Line,6} | ");
        var room = page.Style.Width - number.Length;
        var column = Math.Clamp(place.Column - 1, 0, line.Length);
        var before = Visible.Line(line[..column]);
        var after = Visible.Line(line[column..]);
        if (Cells.Width(before) > room * 2 / 3)
            before = "..." + LastCells(before, room / 2);
        page.Line(new Run(number, Tone.Quiet), before + Cells.Fit(after, room - Cells.Width(before)));
        page.Line(new Run("       | ", Tone.Quiet), new string(' ', Cells.Width(before)), new Run("^", Tone.Strong));
    }

    private static string LastCells(string text, int cells)
    {
        var start = text.Length;
        while (start > 0 && Cells.Width(text[(start - 1)..]) <= cells)
            start--;
        return char.IsLowSurrogate(text[start]) ? text[(start + 1)..] : text[start..];
    }

    internal static void SetSilent(Page page, IReadOnlyCollection<Finding> silent)
    {
        if (silent.Count == 0)
            return;
        page.Blank();
        page.Line(FormattableString.Invariant($"{silent.Count} silenced:"));
        foreach (var finding in silent)
            page.Hung("  ", $"{Visible.Line(finding.Place.ToString())}: {Visible.Line(finding.Rule ?? "")}: {Visible.Line(finding.Silenced ?? "")}");
    }
}
