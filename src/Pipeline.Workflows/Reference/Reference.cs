using System.Globalization;
using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The workflow reference in Markdown, generated from the binder's own keys and from the verbs and tables in use.</summary>
public static class Reference
{
    private static readonly (string Title, string Says, Key[] Keys)[] Sections =
    [
        ("Top of the file", "Of several files planned together each has its `batch`; the bench, a paint or a mix is given once, or alike in each.", FileForm.Keys),
        ("bench", "", BenchBinder.Keys),
        ("bench: sittings", "", SittingBinder.Keys),
        ("bench: painters", "A number, or names; a painter who does not do everything or does not always come has these.", BenchBinder.PainterKeys),
        ("bench: climate", "Either these for the whole day, or the same under `day` and `night`.", ClimateBinder.Keys),
        ("bench: protection", "At a step it says where that step differs from the bench. What is not said is not held against anybody.", ProtectionBinder.Keys),
        ("families", "By name. A family of the trade keeps every figure that is not given; a new one begins with `like`.", FamilyBinder.Keys),
        .. TableForm.All.Select(table => (table.Key.Name, table.Says, table.Keys)),
        ("paints", "By name.", PaintBinder.Keys),
        ("mixes", "By name. A mix may hold other mixes, but not itself.", MixBinder.Keys),
        ("mixes: thinner", "", MixBinder.ThinnerKeys),
        ("storage of paints and models", "", StorageBinder.Keys),
        ("schemes", "By name. A step `follow: NAME` takes a scheme's steps in; beside it stands each placeholder with what it stands for. Schemes may follow other schemes, but not themselves.", Schemes.Keys),
        ("kits", "", KitBinder.KitKeys),
        ("models", "", ModelBinder.Keys),
        ("models: areas", "By name: a size alone, or these.", ModelBinder.AreaKeys),
        ("models: parts", "By name.", ModelBinder.PartKeys),
    ];

    /// <summary>The reference as Markdown that ends in a line feed. The same trade gives the same text.</summary>
    public static string Generate(Trade trade)
    {
        ArgumentNullException.ThrowIfNull(trade);
        var shelf = new Shelf(trade);
        var page = new StringBuilder();
        page.Append("# Workflow reference\n\nGenerated from the program and its verbs; do not edit.\n\n");
        page.Append("A workflow is a YAML file in UTF-8. Scalars are read as text: `19:00` is a time, `yes` is yes. Names are any text on one line, except `all`.\n");
        Quantities(page);
        foreach (var (title, says, keys) in Sections)
            Section(page, title, says, keys);
        Steps(page, shelf);
        Tables(page, trade);
        return page.ToString();
    }

    /// <summary>The page of one verb as Markdown that reads well on a terminal too; empty if the trade has no such verb.</summary>
    public static string OfVerb(Trade trade, string name)
    {
        ArgumentNullException.ThrowIfNull(trade);
        if (new Shelf(trade).Verbs.Named(name) is not { Broken: null } form)
            return "";
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# {form.Name}\n\n{form.Summary} ({Kind(form)}; names {Names(form)})\n");
        if (form.Particulars.Count > 0)
            page.Append("\nIts own keys:\n\n");
        foreach (var particular in form.Particulars)
        {
            var otherwise = particular.IsNeeded ? "must be given" : Otherwise(particular) is { Length: > 0 } value ? $"without it: {value}" : "may be left out";
            page.Append(CultureInfo.InvariantCulture, $"- `{particular.Name}`: {particular.Means}\n  {ValueOf(particular)}; {otherwise}\n");
        }

        return page.ToString();
    }

    private static void Quantities(StringBuilder page)
    {
        page.Append("\n## Quantities\n\nA value without its unit is refused; only under `minutes`, whose name is the unit, it may be left out. The decimal sign is a point.\n\n| what | units | such as |\n|---|---|---|\n");
        page.Append("| size | cm², mm², m² (also cm2, mm2, m2), or a size class | `30 cm²` |\n| volume | mL, L | `7.5 mL` |\n| share | % | `40 %` |\n");
        page.Append("| temperature | °C, °F | `19 °C` |\n| time | s, min, h, d | `90 min`, `1 h 30 min` |\n| time or range | s, min, h, d | `12-24 h` |\n");
        page.Append("| date and time | | `2026-12-12 18:00` |\n| colour | in quotes | `\"#0c0d10\"` |\n| yes or no | | `yes`, `no`, `true`, `false` |\n");
        page.Append("\nSize classes, for areas nobody measures. The figures are defaults, common practice.\n\n| class | size | such as |\n|---|---|---|\n");
        foreach (var (name, squareCentimetres, means) in AmountText.SizeClasses)
            page.Append(CultureInfo.InvariantCulture, $"| `{name}` | {squareCentimetres} cm² | {means} |\n");
        page.Append("\nDrying states, as keys of `drying`: ").AppendJoin(", ", DryingBinder.States.Select(state => $"`{state.Key}`"));
        page.Append(". A state's value is a time, a range, or `never`.\n");
    }

    private static void Section(StringBuilder page, string title, string says, IEnumerable<Key> keys)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        if (says.Length > 0)
            page.Append(says).Append('\n');
        if (!keys.Any())
            return;
        if (says.Length > 0)
            page.Append('\n');
        Table(page, keys);
    }

    private static void Table(StringBuilder page, IEnumerable<Key> keys)
    {
        page.Append("| key | says | such as | without it |\n|---|---|---|---|\n");
        foreach (var key in keys)
            page.Append(CultureInfo.InvariantCulture, $"| `{key.Name}` | {Cell(key.Means)} | `{Cell(key.Example)}` | {(key.Needed ? "must be given" : Cell(key.Otherwise ?? ""))} |\n");
    }

    private static void Steps(StringBuilder page, Shelf shelf)
    {
        page.Append("\n## Steps\n\nA step is a verb with what it acts on, and the verb's own keys. Areas are named singly, as a list, by a part's name for all its areas, or as `all`. ");
        page.Append("Any step can have these keys, too:\n\n");
        Table(page, StepReader.CommonKeys);
        page.Append("\n## Verbs\n");
        foreach (var form in shelf.Verbs.Names.Select(name => shelf.Verbs.Named(name)!).Where(form => form.Broken is null))
            Verb(page, form);
    }

    private static void Verb(StringBuilder page, VerbForm form)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {form.Name}\n\n{form.Summary} ({Kind(form)}; names {Names(form)})\n");
        if (form.Particulars.Count == 0)
            return;
        page.Append("\n| key | says | value | without it |\n|---|---|---|---|\n");
        foreach (var particular in form.Particulars)
        {
            var otherwise = particular.IsNeeded ? "must be given" : Otherwise(particular);
            page.Append(CultureInfo.InvariantCulture, $"| `{particular.Name}` | {Cell(particular.Means ?? "")} | {Cell(ValueOf(particular))} | {otherwise} |\n");
        }
    }

    private static string Kind(VerbForm form) => form.Kind.ToString().ToLowerInvariant();

    private static string Names(VerbForm form) => form.Target switch
    {
        Target.Masks => "masks by their `as` names, or areas they lie on",
        Target.Parts => "parts of the model",
        _ => "areas",
    };

    private static string ValueOf(Particular particular) =>
        (particular.IsList ? "one or more: " : "") + (particular.Kind.Choice is { } choice ? choice.Expected : particular.Kind.Called);

    private static string Otherwise(Particular particular) =>
        particular.Default is null || particular.IsList ? "" : Cell(ParticularKind.Shown(particular.Default));

    private static void Tables(StringBuilder page, Trade trade)
    {
        page.Append("\n## Names the trade knows\n\nTheir case does not matter, nor whether their words are joined by spaces or hyphens.\n\n");
        List(page, "Families", trade.Families.Select(row => (row.Item.Name, row.Item.AlsoCalled)));
        List(page, "Materials", trade.Materials.Select(row => (row.Item.Name, row.Item.AlsoCalled)));
        List(page, "Mask materials", trade.MaskMaterials.Select(row => (row.Item.Name, row.Item.AlsoCalled)));
    }

    private static void List(StringBuilder page, string title, IEnumerable<(string Name, Sequence<string> AlsoCalled)> rows)
    {
        page.Append(CultureInfo.InvariantCulture, $"- {title}: ");
        page.AppendJoin(", ", rows.Select(row => row.AlsoCalled.IsEmpty ? $"`{row.Name}`" : $"`{row.Name}` (also {string.Join(", ", row.AlsoCalled.Select(name => $"`{name}`"))})"));
        page.Append('\n');
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' ');
}
