using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Pipeline.Reports;

/// <summary>What a run of text is on the page. Colour follows it where there is colour; nothing is said by it alone.</summary>
internal enum Tone
{
    Plain,
    Heading,
    Strong,
    Quiet,
    Good,
    Warning,
    Error,
}

/// <summary>Some text in one tone.</summary>
internal readonly record struct Run(string Text, Tone Tone = Tone.Plain)
{
    public static implicit operator Run(string text) => new(text);
}

/// <summary>A page of set lines. The same lines go to a terminal and to a pipe; only their colour differs.</summary>
internal sealed class Page(TextStyle style)
{
    private readonly List<IReadOnlyList<Run>> lines = [];
    private int ruledAt;

    /// <summary>How the page is set.</summary>
    public TextStyle Style => style;

    /// <summary>One line as it is.</summary>
    public void Line(params IReadOnlyList<Run> runs) => lines.Add(runs);

    /// <summary>An empty line, unless there is one already, or a rule that parts just as well, or the page is empty.</summary>
    public void Blank()
    {
        if (lines.Count > ruledAt && lines[^1].Count > 0)
            lines.Add([]);
    }

    /// <summary>A line across the page.</summary>
    public void Rule(char ascii)
    {
        Line(new Run(new string(!style.Drawn ? ascii : ascii == '=' ? '━' : '─', style.Width), Tone.Quiet));
        ruledAt = lines.Count;
    }

    /// <summary>A line with something at the right edge, kept as it is while there is room; else broken like any text.</summary>
    public void Ends(string text, Tone tone, Run end)
    {
        var room = style.Width - Cells.Width(end.Text) - 2;
        if (Cells.Width(text) <= room)
            Line(new Run(Cells.Left(text, room + 2), tone), end);
        else
            Hung("", text, tone, end);
    }

    /// <summary>A text after a lead; further lines stand under the text's beginning.</summary>
    /// <param name="lead">What stands before it, of its full width.</param>
    /// <param name="text">The text, broken where it must be.</param>
    /// <param name="tone">Of the text.</param>
    /// <param name="end">What stands at the right edge of the first line.</param>
    public void Hung(Run lead, string text, Tone tone = Tone.Plain, Run end = default)
    {
        var indent = Cells.Width(lead.Text);
        var kept = end.Text is null ? 0 : Cells.Width(end.Text) + 2;
        var room = Math.Max(20, style.Width - indent - kept);
        var broken = Cells.Wrap(text, room);
        for (var i = 0; i < broken.Count; i++)
        {
            var start = i == 0 ? lead : new Run(new string(' ', indent));
            if (i == 0 && end.Text is not null)
                Line(start, new Run(Cells.Left(broken[i], room + 2), tone), end);
            else
                Line(start, new Run(broken[i], tone));
        }
    }

    /// <summary>The page as text, with escape sequences if the style has colour.</summary>
    public override string ToString()
    {
        if (!style.Colour)
            return string.Concat(lines.Select(line => PlainLine(line) + "\n"));
        using var writer = new StringWriter { NewLine = "\n" };
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.Yes,
            ColorSystem = ColorSystemSupport.Standard,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(writer),
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
        });
        console.Profile.Width = style.Width;
        WriteTo(console);
        return writer.ToString();
    }

    /// <summary>Puts the page on a console.</summary>
    public void WriteTo(IAnsiConsole console) => console.Write(new View(lines));

    private static string PlainLine(IReadOnlyList<Run> line)
    {
        var text = new StringBuilder();
        foreach (var run in line)
            text.Append(run.Text);
        return text.ToString().TrimEnd(' ');
    }

    /// <summary>Hands the lines to Spectre as finished segments: no markup is read from them and nothing is wrapped again.</summary>
    private sealed class View(IReadOnlyList<IReadOnlyList<Run>> lines) : IRenderable
    {
        private static readonly Dictionary<Tone, Style> Styles = new()
        {
            [Tone.Plain] = Spectre.Console.Style.Plain,
            [Tone.Heading] = new Style(decoration: Decoration.Bold),
            [Tone.Strong] = new Style(decoration: Decoration.Bold),
            [Tone.Quiet] = new Style(Color.Grey),
            [Tone.Good] = new Style(Color.Green),
            [Tone.Warning] = new Style(Color.Olive, decoration: Decoration.Bold),
            [Tone.Error] = new Style(Color.Maroon, decoration: Decoration.Bold),
        };

        public Measurement Measure(RenderOptions options, int maxWidth) => new(maxWidth, maxWidth);

        public IEnumerable<Segment> Render(RenderOptions options, int maxWidth)
        {
            foreach (var line in lines)
            {
                var end = line.Count;
                while (end > 0 && line[end - 1].Text.AsSpan().Trim(' ').IsEmpty)
                    end--;
                for (var i = 0; i < end; i++)
                {
                    var text = i == end - 1 ? line[i].Text.TrimEnd(' ') : line[i].Text;
                    if (text.Length > 0)
                        yield return new Segment(text, Styles[line[i].Tone]);
                }

                yield return Segment.LineBreak;
            }
        }
    }
}
