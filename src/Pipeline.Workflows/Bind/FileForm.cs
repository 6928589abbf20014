using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>One file's top keys.</summary>
internal sealed class FileForm
{
    /// <summary>Keys at the top of a file.</summary>
    public static readonly Key[] Keys =
    [
        new("batch", "the batch's name", Needed: true, "Tidewater salvage crew"),
        new("due", "when everything should be finished", Needed: false, "2026-12-12 18:00"),
        new("pace", "how close to the low drying figures the plan is laid: comfortable or brisk", Needed: false, "brisk", "comfortable"),
        new("aim", "what is best after the due times, most important first: finish soon, few changes, short masks, even days", Needed: false, "[short masks, finish soon]", "in that order"),
        new("bench", "where and when the work is done", Needed: true, "{ zone: Europe/Lisbon, sittings: [] }"),
        new("families", "other figures for coating families, or families of one's own", Needed: false, "{ enamel: { pot-life: 2 h } }"),
        .. TableForm.All.Select(table => table.Key),
        new("paints", "paints on the shelf", Needed: false, "{ hull black: { family: acrylic lacquer } }"),
        new("mixes", "mixes of them", Needed: false, "{ old brass: { parts: { clear straw: 2, clear rust: 1 } } }"),
        new("schemes", "stretches of route to follow in several models", Needed: false, "{ brass ground: { areas: [metal], route: [] } }"),
        new("kits", "kits with their models", Needed: true, "- kit: Salvage divers"),
        new("allow", "rules silenced for the whole batch, each with the reason", Needed: false, "{ no-gloss-under-decal: the film is matt itself }"),
    ];

    private FileForm(MappingNode root) => Root = root;

    public MappingNode Root { get; }

    public string? Name { get; private set; }

    public Pace? Pace { get; private set; }

    public Sequence<BatchAim>? Aims { get; private set; }

    /// <summary>The top keys of a file; null and a finding if it is no mapping.</summary>
    public static FileForm? Read(Desk desk, SyntaxTree tree)
    {
        if (tree.Root is not MappingNode root)
        {
            desk.Error(tree.Root, $"The file holds {tree.Root.Kind}, not keys with values.", "Begin with ‘batch: ’ and its name; docs/workflow-reference.md shows the rest.");
            return null;
        }

        var form = new FileForm(root);
        foreach (var (key, value) in root.Entries)
        {
            switch (key.Text)
            {
                case "batch":
                    form.Name = desk.NewName(value, "the batch");
                    break;
                case "pace":
                    form.Pace = desk.Said(value, Choice.Of<Pace>.Read, Choice.Of<Pace>.Expected);
                    break;
                case "aim":
                    form.Aims = Aim(desk, value);
                    break;
                case "due" or "bench" or "families" or "paints" or "mixes" or "schemes" or "kits" or "allow":
                    break;
                case var table when TableForm.Named(table) is not null:
                    break;
                default:
                    desk.UnknownKey(key, "a workflow", Keys.Select(known => known.Name));
                    break;
            }
        }

        if (root["batch"] is null)
            desk.MissingKey(root, "The file", "batch", "the batch's name");
        return form;
    }

    /// <summary>The key node of a top key.</summary>
    public TextNode? KeyOf(string name)
    {
        foreach (var entry in Root.Entries)
        {
            if (entry.Key.Text == name)
                return entry.Key;
        }

        return null;
    }

    private static Sequence<BatchAim> Aim(Desk desk, SyntaxNode node)
    {
        var aims = new List<BatchAim>();
        foreach (var item in desk.OneOrMore(node, $"one or more of {Choice.Of<BatchAim>.Expected}"))
        {
            if (desk.Said(item, Choice.Of<BatchAim>.Read, Choice.Of<BatchAim>.Expected) is not { } aim)
                continue;
            if (aims.Contains(aim))
                desk.Error(item, $"‘{WordText.Spaced(aim.ToString())}’ is given twice.", "Keep the first.");
            else
                aims.Add(aim);
        }

        return aims.Union(Enum.GetValues<BatchAim>()).ToSequence();
    }
}
