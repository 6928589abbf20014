using CsCheck;
using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

/// <summary>A unified diff says what changed, and whoever follows it gets the new text.</summary>
public sealed class UnifiedDiffTests
{
    private static readonly string[] Words = ["coat", "mask", "unmask", "", "seal"];

    private static readonly Gen<string> Texts =
        from lines in Gen.Int[0, Words.Length - 1].Select(word => Words[word]).Array[0, 30]
        from end in Gen.Bool.Select(isWindows => isWindows ? "\r\n" : "\n")
        from isEnded in Gen.Bool
        select string.Join(end, lines) + (isEnded && lines.Length > 0 ? end : "");

    [Fact]
    public void Equal_texts_have_no_diff() => UnifiedDiff.Render("crew.yaml", "a\n", "a\n").Should().BeEmpty();

    [Fact]
    public void A_change_shows_three_lines_around_it() =>
        UnifiedDiff.Render("crew.yaml", "1\n2\n3\n4\n5\n6\n7\n8\n9\n", "1\n2\n3\n4\nfive\n6\n7\n8\n9\n").Should().Be(
            "--- crew.yaml\n+++ crew.yaml\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n");

    [Fact]
    public void A_last_line_without_its_end_is_told() =>
        UnifiedDiff.Render("crew.yaml", "1\n2", "1\n2\n3").Should().Be(
            "--- crew.yaml\n+++ crew.yaml\n@@ -1,2 +1,3 @@\n 1\n-2\n\\ No newline at end of file\n+2\n+3\n\\ No newline at end of file\n");

    [Fact]
    public void Changes_far_apart_are_two_hunks() =>
        UnifiedDiff.Render("crew.yaml", "a\n1\n2\n3\n4\n5\n6\n7\nb\n", "A\n1\n2\n3\n4\n5\n6\n7\nB\n").Split("@@ -").Should().HaveCount(3);

    [Fact]
    public void Following_a_diff_gives_the_new_text() => Gen.Select(Texts, Texts).Sample((before, after) =>
        Followed(before, UnifiedDiff.Render("crew.yaml", before, after)).Should().Be(after));

    /// <summary>Does what a diff says, line by line, and minds its counts.</summary>
    private static string Followed(string text, string diff)
    {
        if (diff.Length == 0)
            return text;
        var old = Lines(text);
        var now = new List<string>();
        var at = 0;
        var steps = Lines(diff).Skip(2).ToList();
        for (var i = 0; i < steps.Count; i++)
        {
            if (steps[i].StartsWith("@@", StringComparison.Ordinal))
            {
                var from = steps[i].Split(' ')[1][1..].Split(',');
                var start = int.Parse(from[0], System.Globalization.CultureInfo.InvariantCulture) - (from is [_, "0"] ? 0 : 1);
                now.AddRange(old.GetRange(at, start - at));
                at = start;
                var to = steps[i].Split(' ')[2][1..].Split(',');
                (now.Count + (to is [_, "0"] ? 0 : 1)).Should().Be(int.Parse(to[0], System.Globalization.CultureInfo.InvariantCulture));
                continue;
            }

            var line = steps[i][1..];
            if (i + 1 < steps.Count && steps[i + 1].StartsWith('\\'))
                line = line.TrimEnd('\n');
            if (steps[i][0] is ' ' or '-')
                old[at++].Should().Be(line);
            if (steps[i][0] is ' ' or '+')
                now.Add(line);
        }

        now.AddRange(old.Skip(at));
        return string.Concat(now);
    }

    private static List<string> Lines(string text) => [.. text.Split('\n').Select((line, index) => (line, index)).Where(each => each.index < text.Split('\n').Length - 1 || each.line.Length > 0)
        .Select(each => each.index < text.Split('\n').Length - 1 ? each.line + "\n" : each.line)];
}
