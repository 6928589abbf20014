using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>mixes</c>. A mix may hold other mixes, but not itself.</summary>
internal sealed class MixBinder(Desk desk, Shelf shelf)
{
    private const double MostParts = 1_000;
    private const int MostInOneMix = 50;
    private const int DeepestMix = 16;

    /// <summary>Keys of a mix.</summary>
    public static readonly Key[] Keys =
    [
        new("parts", "paints or mixes, each with its parts by volume", Needed: true, "{ clear straw: 2, clear rust: 1 }"),
        new("thinner", "what it is thinned with, how much, and of what that is a share", Needed: false, "{ with: levelling thinner, share: 40 %, of: mix }", "not thinned"),
        new("family", "its chemistry; needed only where the parts differ", Needed: false, "acrylic lacquer", "that of its parts"),
        new("sheen", "how it shines when dry: matt, satin, gloss or mirror", Needed: false, "satin", "that of its largest part"),
        new("colour", "sRGB in quotes, since ‘#’ begins a comment", Needed: false, "\"#b58b3b\"", "that of its only coloured part, if it has just one"),
        new("clear", "whether it is a transparent colour or a varnish", Needed: false, "yes", "yes if all parts are"),
        new("metallic", "whether it carries metal flakes", Needed: false, "yes", "yes if any part does"),
        new("drying", "times by drying state", Needed: false, "{ recoatable: 30 min }", "the longest of its parts"),
        new("pot-life", "how long it stays usable in the cup", Needed: false, "45 min", "the shortest of its parts"),
        new("note", "a remark", Needed: false, "count the drops"),
        new("makes", "how much is mixed in one go for the whole batch", Needed: false, "13 mL", "as it is needed"),
    ];

    /// <summary>Keys of a thinner.</summary>
    public static readonly Key[] ThinnerKeys =
    [
        new("with", "the thinner's name", Needed: true, "levelling thinner"),
        new("share", "how much", Needed: true, "40 %"),
        new("of", "what that is a share of: mix or paint; never guessed, so that nothing is planned without it", Needed: false, "mix", "asked for"),
    ];

    private readonly Dictionary<string, (TextNode Key, MappingNode Mapping)> waiting = new(StringComparer.Ordinal);
    private readonly List<string> path = [];

    /// <summary>Notes the mixes of one file; <see cref="BindAll"/> binds them once all files are noted.</summary>
    public void Note(SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "mixes by name, each with its parts") is not { } mixes)
            return;
        foreach (var (key, value) in mixes.Entries)
        {
            if (desk.NewName(key, "a mix") is not { } name || !PaintBinder.IsNew(given, name, key, value))
                continue;
            if (desk.Mapping(value, "the parts at least, such as { parts: { clear straw: 2, clear rust: 1 } }") is { } mapping)
                waiting.Add(name, (key, mapping));
            else
                shelf.AddBroken(name);
        }
    }

    /// <summary>Binds every noted mix, in file order but each after the mixes it holds.</summary>
    public void BindAll()
    {
        foreach (var name in waiting.Keys.ToList())
            Bind(name);
    }

    private void Bind(string name)
    {
        if (!waiting.TryGetValue(name, out var mix) || shelf.Paint(name) is not null || shelf.IsBroken(name))
            return;
        path.Add(name);
        if (BindOne(mix.Key, name, mix.Mapping) is { } bound)
            shelf.Add(bound);
        else
            shelf.AddBroken(name);
        path.RemoveAt(path.Count - 1);
    }

    private Paint? BindOne(TextNode key, string name, MappingNode mapping)
    {
        var label = new PaintBinder.Label();
        Sequence<RecipePart>? parts = null;
        Thinning? thinner = null;
        Volume? makes = null;
        foreach (var (figure, value) in mapping.Entries)
        {
            if (figure.Text == "family")
                label.Family = PaintBinder.FamilyNamed(desk, shelf, value);
            else if (figure.Text == "parts")
                parts = Parts(value);
            else if (figure.Text == "thinner")
                thinner = Thinner(value);
            else if (figure.Text == "makes")
                makes = desk.Said(value, AmountText.Volume, AmountText.VolumeExpected);
            else if (!label.Take(desk, figure, value))
                desk.UnknownKey(figure, "a mix", Keys.Select(known => known.Name));
        }

        if (mapping["parts"] is null)
            desk.MissingKey(mapping, $"The mix ‘{name}’", "parts", "what it is mixed of, such as { clear straw: 2, clear rust: 1 }", key);
        if (parts is not { IsEmpty: false } found || FamilyOf(found, label.Family, key, mapping) is not { } family)
            return null;
        return Mixed(name, key, family, label, new Recipe(found, thinner) { Makes = makes });
    }

    private static Paint Mixed(string name, TextNode key, Family family, PaintBinder.Label label, Recipe recipe)
    {
        var parts = recipe.Parts;
        var paints = parts.Select(part => part.Paint).ToList();
        var coloured = paints.Where(paint => paint.Colour is not null).ToList();
        var isOneFamily = paints.TrueForAll(paint => paint.Family.Name == family.Name);
        var (thin, heavy, effect) = isOneFamily
            ? (paints.Select(paint => paint.Thin).Aggregate(Longer), paints.Select(paint => paint.Heavy).Aggregate(Longer), paints.Select(paint => paint.Effect).Aggregate(Longer))
            : (family.Thin, family.Heavy, family.Effect ?? family.Thin);
        return new Paint
        {
            Name = name,
            Place = key.Place,
            Family = family,
            // The duller of equally large parts: dulling pigment wins in a mix.
            Sheen = label.Sheen ?? parts.OrderByDescending(part => part.Parts).ThenBy(part => part.Paint.Sheen).First().Paint.Sheen,
            IsClear = label.IsClear ?? paints.TrueForAll(paint => paint.IsClear),
            IsMetallic = label.IsMetallic ?? paints.Exists(paint => paint.IsMetallic),
            Colour = label.Colour ?? (coloured.Count == 1 ? coloured[0].Colour : null),
            Thin = thin.With(label.Drying),
            Heavy = heavy.With(label.Drying),
            Effect = effect.With(label.Drying),
            HasLabelTimes = label.Drying.Count > 0 || (isOneFamily && paints.Exists(paint => paint.HasLabelTimes)),
            PotLife = label.PotLife ?? paints.Select(paint => paint.PotLife).Append(family.PotLife).Min(),
            Recipe = recipe,
            Storage = label.Storage,
            Note = label.Note,
        };
    }

    private Family? FamilyOf(Sequence<RecipePart> parts, Family? given, TextNode key, MappingNode mapping)
    {
        var families = parts.Select(part => part.Paint.Family).DistinctBy(family => family.Name).ToList();
        var named = string.Join(" and ", families.Select(family => family.Name));
        if (mapping["family"] is { } node)
        {
            if (given is not null && families.Count == 1 && families[0].Name != given.Name)
                desk.Error(node, $"All parts are {named}, so the mix cannot be {given.Name}.", "Leave ‘family’ out.");
            return given;
        }

        if (families.Count == 1)
            return families[0];
        // what does not go into one cup is a rule's, and that the mix then behaves like most of it is for the rest of the check alone
        if (families.Select(family => family.Carrier).Distinct().Count(carrier => carrier is not (Carrier.None or Carrier.Reaction)) > 1)
            return parts.MaxBy(part => part.Parts)!.Paint.Family;
        desk.Error(key, $"The parts of ‘{key.Text}’ are of different families: {named}.", "Mix paints of one family, or say which it behaves like with ‘family: ’.");
        return null;
    }

    private Sequence<RecipePart>? Parts(SyntaxNode node)
    {
        if (desk.Mapping(node, "paints with their parts, such as { clear straw: 2, clear rust: 1 }") is not { } mapping)
            return null;
        if (mapping.Entries.Count is 0 or > MostInOneMix)
        {
            desk.Error(node, mapping.Entries.Count == 0 ? "The mix has no parts." : $"The mix has more than {MostInOneMix} parts.", "Write paints with their parts, such as { clear straw: 2, clear rust: 1 }.");
            return null;
        }

        var parts = new List<RecipePart>();
        foreach (var (key, value) in mapping.Entries)
        {
            var isNumber = desk.Says(value, text => NumberText.Number(text, MostParts), "parts by volume, such as 2", out var number);
            if (isNumber && number == 0)
                desk.Error(value, "No parts of a paint are none of it.", "Leave the paint out, or write more than 0.");
            if (Part(key) is { } paint && isNumber && number > 0)
                parts.Add(new RecipePart(paint, number));
        }

        return parts.Count == mapping.Entries.Count ? parts.ToSequence() : null;
    }

    private Paint? Part(TextNode key)
    {
        var name = Desk.Plain(key.Text);
        var at = path.IndexOf(name);
        if (at >= 0)
        {
            var cycle = string.Join(" → ", path.Skip(at).Append(name).Select(step => $"‘{step}’"));
            desk.Error(key, at == path.Count - 1 ? $"The mix ‘{name}’ holds itself." : $"Mixes hold each other in a ring: {cycle}.", "Take one of them out.");
            return null;
        }

        if (path.Count > DeepestMix)
        {
            desk.Error(key, $"Mixes are held in each other more than {DeepestMix} deep.", "Write the paints themselves.");
            return null;
        }

        Bind(name);
        if (shelf.Paint(name) is { } paint)
            return paint;
        if (!shelf.IsBroken(name))
            desk.UnknownName(key, name, "paint or mix", shelf.PaintNames.Concat(waiting.Keys).Distinct());
        return null;
    }

    private Thinning? Thinner(SyntaxNode node)
    {
        if (desk.Mapping(node, "{ with: levelling thinner, share: 40 %, of: mix }") is not { } mapping)
            return null;
        string? with = null;
        ShareOf? of = null;
        Share? share = null;
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "with":
                    with = desk.Text(value, "the thinner's name");
                    break;
                case "share":
                    share = desk.Said(value, AmountText.Share, AmountText.ShareExpected);
                    break;
                case "of":
                    of = desk.Said(value, Choice.Of<ShareOf>.Read, Choice.Of<ShareOf>.Expected);
                    break;
                default:
                    desk.UnknownKey(key, "a thinner", ThinnerKeys.Select(known => known.Name));
                    break;
            }
        }

        if (mapping["with"] is null)
            desk.MissingKey(mapping, "The thinner", "with", "its name");
        if (mapping["share"] is null)
            desk.MissingKey(mapping, "The thinner", "share", "how much, such as 40 %");
        if (of == ShareOf.Mix && share is { Fraction: >= 1 })
            desk.Error(mapping["share"]!, "All of the mix would be thinner.", "Write a share of less than 100 %.");
        var isOfKnown = of is not null || mapping["of"] is null;
        return with is not null && share is { } known && isOfKnown ? new Thinning(with, known, of, mapping["share"]!.Place) : null;
    }

    private static DryingTable Longer(DryingTable left, DryingTable right)
    {
        foreach (var (_, state) in DryingBinder.States)
            left = left.With(state, left.To(state) is { } one && right.To(state) is { } other ? DryingRange.Longer(one, other) : null);
        return left;
    }
}
