using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>families</c>: other figures for a family of the trade, or a family of one's own.</summary>
internal static class FamilyBinder
{
    /// <summary>Keys of a family.</summary>
    public static readonly Key[] Keys =
    [
        new("like", "the family a new one takes its figures from", Needed: false, "waterborne acrylic"),
        new("drying", "times by drying state, for thin and heavy coats alike", Needed: false, "{ mask-safe: 12-24 h }"),
        new("thin", "times by drying state for a thin airbrushed coat", Needed: false, "{ recoatable: 15-30 min }"),
        new("heavy", "times by drying state for a brushed or heavy coat", Needed: false, "{ recoatable: 20-60 min }"),
        new("effect", "times by drying state for a very thin effect", Needed: false, "{ recoatable: 12-24 h }"),
        new("recoat-open", "how long it can still be recoated wet before it must dry through", Needed: false, "1 h"),
        new("open-time", "how long it can still be worked wet-in-wet or cleaned back", Needed: false, "1 h"),
        new("pot-life", "how long a mix stays usable in the cup", Needed: false, "45 min"),
        new("coldest", "coldest bench at which it forms a film", Needed: false, "10 °C"),
        new("warmest", "warmest bench at which it can be laid", Needed: false, "30 °C"),
        new("dampest", "dampest air in which it can be laid", Needed: false, "80 %"),
        new("dampest-sprayed-matt", "dampest air in which it can be sprayed matt", Needed: false, "65 %"),
        new("driest-sprayed", "driest air in which it can be sprayed before it dries on the tip", Needed: false, "30 %"),
        new("warmest-sprayed", "warmest bench at which it can be sprayed before it dries on the tip", Needed: false, "28 °C"),
        new("thinners", "what it is thinned with, and never curdles with", Needed: false, "[water, acrylic thinner]"),
        new("cleaners", "what cleans the tools of it", Needed: false, "[water, isopropyl]"),
        new("isocyanate", "whether its hardener holds isocyanate", Needed: false, "yes"),
    ];

    public static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "families by name, each with the figures to change") is not { } families)
            return;
        foreach (var (key, value) in families.Entries)
        {
            if (desk.NewName(key, "a family") is not { } name)
                continue;
            if (given.Note(key, value, $"The family ‘{name}’", WordText.Folded(name)) && desk.Mapping(value, "the figures to change, such as { drying: { mask-safe: 12-24 h } }") is { } mapping)
                BindOne(desk, shelf, key, name, mapping);
        }
    }

    private static void BindOne(Desk desk, Shelf shelf, TextNode key, string name, MappingNode mapping)
    {
        var known = shelf.Family(name);
        var like = mapping["like"];
        if (known is not null && like is not null)
            desk.Error(like, $"‘{name}’ is a family of the trade already.", "Leave ‘like’ out to change its figures, or give the new family another name.");
        if (known is null && like is null)
        {
            desk.UnknownName(key, name, "family", shelf.FamilyNames);
            return;
        }

        var family = known;
        if (family is null)
        {
            if (desk.Text(like!, "the name of a family") is not { } from)
                return;
            if (shelf.Family(from) is not { } model)
            {
                desk.UnknownName(like!, from, "family", shelf.FamilyNames);
                return;
            }

            family = model with { Name = name, AlsoCalled = [], Like = model.Name };
        }

        var hasOwnTimes = false;
        foreach (var (figure, value) in mapping.Entries)
            family = WithFigure(desk, family, figure, value, ref hasOwnTimes);
        shelf.Add(family with { Source = Tables.TheFile }, hasOwnTimes);
    }

    private static Family WithFigure(Desk desk, Family family, TextNode key, SyntaxNode value, ref bool hasOwnTimes)
    {
        switch (key.Text)
        {
            case "like":
                return family;
            case "drying" or "thin" or "heavy" or "effect":
                var times = DryingBinder.Bind(desk, value);
                hasOwnTimes = true;
                return family with
                {
                    Thin = key.Text is "drying" or "thin" ? family.Thin.With(times) : family.Thin,
                    Heavy = key.Text is "drying" or "heavy" ? family.Heavy.With(times) : family.Heavy,
                    Effect = key.Text is "effect" ? (family.Effect ?? family.Thin).With(times) : family.Effect,
                };
            case "recoat-open":
                return family with { RecoatOpen = desk.Said(value, DurationText.Drying, DurationText.Expected) };
            case "open-time":
                return family with { OpenTime = desk.Said(value, DurationText.Drying, DurationText.Expected) };
            case "pot-life":
                return family with { PotLife = desk.Said(value, DurationText.Drying, DurationText.Expected) };
            case "coldest":
                return family with { Coldest = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected) ?? family.Coldest };
            case "warmest":
                return family with { Warmest = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected) ?? family.Warmest };
            case "dampest":
                return family with { Dampest = desk.Said(value, AmountText.Share, AmountText.ShareExpected) ?? family.Dampest };
            case "dampest-sprayed-matt":
                return family with { DampestSprayedMatt = desk.Said(value, AmountText.Share, AmountText.ShareExpected) };
            case "driest-sprayed":
                return family with { DriestSprayed = desk.Said(value, AmountText.Share, AmountText.ShareExpected) };
            case "warmest-sprayed":
                return family with { WarmestSprayed = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected) };
            case "thinners":
                return family with { Thinners = Named(desk, value, "thinner") };
            case "cleaners":
                return family with { Cleaners = Named(desk, value, "cleaner") };
            case "isocyanate":
                return family with { HasIsocyanate = desk.YesOrNo(value) };
            default:
                desk.UnknownKey(key, "a family", Keys.Select(known => known.Name));
                return family;
        }
    }

    private static Sequence<string> Named(Desk desk, SyntaxNode node, string what) =>
        desk.OneOrMore(node, $"one {what} or more").Select(item => desk.NewName(item, $"a {what}")).OfType<string>().ToSequence();
}
