using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Reports.Harbour;

namespace Pipeline.Tests.Units.Reports;

/// <summary>Names that try to be more than names, and a plan that uses one in every place a file can fill.</summary>
internal static class Hostile
{
    public const string Escape = "\u001b[2J\u001b]0;owned\u0007";
    public const string Bidi = "suit\u202Etius\u2066\u200B";
    public const string Markup = "[red]diver[/] [[link=file:///]]";
    public const string Markdown = "a|b](x) `code` **bold** <script>alert(1)</script> ![p](q) &amp; [l](javascript:x)";
    public const string Link = "https://harbour.example/x www.harbour.example me@harbour.example";
    public const string Lines = "one\r\n# two\n- three\t\u2028four";
    public const string Json = "\"}],\\u0000{\u0000</script>";

    /// <summary>Each kind of hostile name.</summary>
    public static TheoryData<string> Names =>
        new(Escape, Bidi, Markup, Markdown, Link, Lines, Json, "潮の甲冑 🐙 e\u0301", "\ud800 lone", "# head", "- item", "1. item", "=== ", "    code", "");

    /// <summary>A plan in which every word of the file is the name.</summary>
    public static Plan PlanOf(string name)
    {
        var when = At("4 Dec 19:00");
        var place = new Place(name, 3, 5);
        var task = Task("4 Dec 19:00-19:30", "diver 1-2/3", "x") with
        {
            Id = name,
            Verb = name,
            Model = name,
            Kit = name,
            Areas = [name],
            Words = name,
            Paint = new PaintUse(name, 1, 1, 0),
            Tool = name,
            CleanOutBefore = new CleanOut(name, name, 5),
            LoadedUntil = when,
            Starts = [new WaitStarted(name, when, when, true)],
            WhyNotEarlier = name,
            Note = name,
            Place = place,
        };
        var finding = new Finding
        {
            Rule = name,
            Level = Level.Warning,
            Place = place,
            Message = name,
            Remedy = name,
            Model = name,
            Areas = [name],
            Related = [new Related(place, name)],
        };
        return Empty with
        {
            Batch = name,
            Days =
            [
                Day(
                    Sitting("4 Dec 19:00-21:00", task) with
                    {
                        Painter = name,
                        TakeOut = [name],
                        Mixes = [new MixOrder(name, 3, [new MixPart(name, 1, 3, 60)], null)],
                        Drying = [new LeftDrying(name, name, name, when)],
                        MasksOn = [new MaskLeft(name, name, when, when)],
                        Cautions = [new Caution("name", name)],
                    },
                    Sitting("4 Dec 19:00-20:00") with { Painter = "Rui" }),
            ],
            Finishes = [new ModelFinish(name, name, 3, when, when, when, null)],
            Masks = [new PlannedMask(name, name, name, when, At("6 Dec 19:00"), null)],
            Shopping = [new ShoppingItem(name, 3, 1, [name])],
            Findings =
            [
                finding,
                finding with { Place = new Place(name, 9, 1) },
                finding with { Silenced = name },
            ],
            CriticalChain = [name],
            Assumptions = [name],
        };
    }

    /// <summary>Findings in which every word of the file is the name.</summary>
    public static Sequence<Finding> FindingsOf(string name) => PlanOf(name).Findings;

    /// <summary>Whether a text holds a character that steers a terminal or reorders what is read; line ends are none.</summary>
    public static bool Steers(string text) => text.EnumerateRunes().Any(rune => rune.Value != '\n' && System.Text.Rune.GetUnicodeCategory(rune) is
        System.Globalization.UnicodeCategory.Control or
        System.Globalization.UnicodeCategory.Format or
        System.Globalization.UnicodeCategory.LineSeparator or
        System.Globalization.UnicodeCategory.ParagraphSeparator);
}
