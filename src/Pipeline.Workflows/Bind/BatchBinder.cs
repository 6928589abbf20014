using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Binds files to a batch, one kind of thing after another, so that every name is known before it is needed.</summary>
internal sealed class BatchBinder(Desk desk, Shelf shelf)
{
    public Batch? Bind(IReadOnlyList<SyntaxTree> trees)
    {
        var files = trees.Select(tree => FileForm.Read(desk, tree)).OfType<FileForm>().ToList();
        if (files.Count == 0)
            return null;
        var binder = new BenchBinder(desk, shelf);
        var bench = Bench(files, binder);
        BindShelf(files);
        var schemes = new Schemes(desk, shelf);
        var use = new BenchUse(desk);
        var steps = new StepReader(desk, shelf, bench, use);
        foreach (var node in Nodes(files, "schemes"))
            schemes.Read(node, steps);
        schemes.Check();
        var (kits, dues) = Kits(files, schemes, steps, bench?.Zone);
        var pace = Agreed(files, "pace", file => file.Pace);
        var aims = Agreed(files, "aim", file => file.Aims);
        var silences = Nodes(files, "allow").SelectMany(node => SilenceBinder.Bind(desk, shelf, node)).ToSequence();
        use.Check(binder.ToolNames, [.. kits.SelectMany(kit => kit.Routes).SelectMany(route => route.Steps).Select(step => step.Work)]);
        if (desk.HasErrors || bench is null)
            return null;
        return new Batch
        {
            Name = string.Join(" + ", files.Select(file => file.Name).Distinct()),
            Files = trees.Select(tree => tree.File).ToSequence(),
            // Everything is finished when the last file's things are; a file without a due time leaves that open.
            Due = dues.TrueForAll(due => due is not null) ? dues.MaxBy(due => due!.By) : null,
            Bench = bench,
            Paints = shelf.Paints.ToSequence(),
            Tables = shelf.Tables,
            Kits = kits.ToSequence(),
            Pace = pace ?? Pace.Comfortable,
            Aims = aims ?? Enum.GetValues<BatchAim>().ToSequence(),
            Silences = silences,
        };
    }

    private static IEnumerable<SyntaxNode> Nodes(List<FileForm> files, string key) => files.Select(file => file.Root[key]).OfType<SyntaxNode>();

    private Bench? Bench(List<FileForm> files, BenchBinder binder)
    {
        Bench? first = null;
        var isGiven = false;
        foreach (var file in files)
        {
            if (file.KeyOf("bench") is not { } key)
                continue;
            var bench = binder.Bind(key, file.Root["bench"]!);
            if (isGiven && first is not null && bench is not null && !IsSame(first, bench))
                desk.Error(key, "The files are planned on one bench, but this bench differs from the first.", "Give the bench in one file only, or alike in all.", new Related(first.Place, "the first bench"));
            first ??= bench;
            isGiven = true;
        }

        if (!isGiven)
            desk.Error(files[0].Root, files.Count == 1 ? "The file has no ‘bench’." : "None of the files has a ‘bench’.", "Add ‘bench: ’ and where and when the work is done.");
        return first;
    }

    /// <summary>Alike but for where the files say so.</summary>
    private static bool IsSame(Bench left, Bench right)
    {
        var place = left.Place;
        return Placeless(left) == Placeless(right);

        Bench Placeless(Bench bench) => bench with
        {
            Place = place,
            Weekly = bench.Weekly.Select(sitting => sitting with { Place = place }).ToSequence(),
            Dated = bench.Dated.Select(sitting => sitting with { Place = place }).ToSequence(),
        };
    }

    private void BindShelf(List<FileForm> files)
    {
        var (families, paints) = (new GivenOnce(desk), new GivenOnce(desk));
        foreach (var node in Nodes(files, "families"))
            FamilyBinder.Bind(desk, shelf, node, families);
        BindTables(files);
        foreach (var node in Nodes(files, "paints"))
            PaintBinder.Bind(desk, shelf, node, paints);
        var mixes = new MixBinder(desk, shelf);
        foreach (var node in Nodes(files, "mixes"))
            mixes.Note(node, paints);
        mixes.BindAll();
    }

    private void BindTables(List<FileForm> files)
    {
        foreach (var table in TableForm.All)
        {
            var given = new GivenOnce(desk);
            foreach (var node in Nodes(files, table.Key.Name))
                table.Bind(desk, shelf, node, given);
        }
    }

    private (List<Kit> Kits, List<Due?> Dues) Kits(List<FileForm> files, Schemes schemes, StepReader steps, DateTimeZone? zone)
    {
        var binder = new KitBinder(desk, shelf, schemes, steps, new NamedElsewhere(Nodes(files, "kits")), zone);
        var kits = new List<Kit>();
        var dues = new List<Due?>();
        foreach (var file in files)
        {
            var due = file.Root["due"] is { } node ? KitBinder.DueAt(desk, node, zone) : null;
            if (file.Root["kits"] is not { } kitsNode)
                continue;
            dues.Add(due);
            kits.AddRange(binder.Bind(kitsNode, due));
        }

        if (dues.Count == 0)
            desk.Error(files[0].Root, files.Count == 1 ? "The file has no ‘kits’." : "None of the files has any ‘kits’.", "Add ‘kits: ’ and at least one, beginning with ‘- kit: ’.");
        return (kits, dues);
    }

    /// <summary>What the files say where they say it; a finding where two of them differ.</summary>
    private T? Agreed<T>(List<FileForm> files, string key, Func<FileForm, T?> said)
        where T : struct
    {
        (TextNode Key, T Value)? first = null;
        foreach (var file in files)
        {
            if (said(file) is not { } value)
                continue;
            if (first is { } before && !before.Value.Equals(value))
                desk.Error(file.KeyOf(key)!, $"The files are planned together, but this ‘{key}’ differs from the first.", $"Give ‘{key}’ in one file only, or alike in all.", new Related(before.Key.Place, "the first"));
            first ??= (file.KeyOf(key)!, value);
        }

        return first?.Value;
    }
}
