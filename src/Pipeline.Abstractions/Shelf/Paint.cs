namespace Pipeline.Abstractions;

/// <summary>A paint or a mix on the shelf.</summary>
public sealed record Paint
{
    /// <summary>Its name in the file.</summary>
    public required string Name { get; init; }

    /// <summary>Where the file says it.</summary>
    public required Place Place { get; init; }

    /// <summary>Its chemistry; of a mix, that of its parts.</summary>
    public required Family Family { get; init; }

    /// <summary>How it shines when dry.</summary>
    public Sheen Sheen { get; init; } = Sheen.Matt;

    /// <summary>Transparent colour or varnish.</summary>
    public bool IsClear { get; init; }

    /// <summary>Carries metal flakes.</summary>
    public bool IsMetallic { get; init; }

    /// <summary>sRGB as <c>#rrggbb</c>, or null.</summary>
    public string? Colour { get; init; }

    /// <summary>What is left of it, or null if the file does not say.</summary>
    public Volume? Stock { get; init; }

    /// <summary>Times for a thin coat: the family's, with what the label in the file says.</summary>
    public required DryingTable Thin { get; init; }

    /// <summary>Times for a brushed or heavy coat.</summary>
    public required DryingTable Heavy { get; init; }

    /// <summary>Times for a very thin effect.</summary>
    public required DryingTable Effect { get; init; }

    /// <summary>True if the file, not the family, gives at least one drying time.</summary>
    public bool HasLabelTimes { get; init; }

    /// <summary>How long a mix stays usable in the cup, or null.</summary>
    public Drying? PotLife { get; init; }

    /// <summary>How it is mixed; null for a paint straight from its pot.</summary>
    public Recipe? Recipe { get; init; }

    /// <summary>Where it is kept, if that is colder than the bench; null if the file does not say.</summary>
    public Storage? Storage { get; init; }

    /// <summary>The painter's own remark, or null.</summary>
    public string? Note { get; init; }
}

/// <summary>Parts of paints by volume, plus thinner.</summary>
public sealed record Recipe(Sequence<RecipePart> Parts, Thinning? Thinner)
{
    /// <summary>How much is mixed, where the file says: one pot for the whole batch. Null if it is mixed as it is needed.</summary>
    public Volume? Makes { get; init; }
}

/// <summary>So many parts by volume of one paint.</summary>
public sealed record RecipePart(Paint Paint, double Parts);

/// <summary>What a share of thinner is a share of.</summary>
public enum ShareOf
{
    /// <summary>Of the finished mix: 40 % leaves 60 % paint.</summary>
    Mix,

    /// <summary>Of the paint: 40 % is 40 parts to 100 of paint.</summary>
    Paint,
}

/// <summary>How a mix is thinned.</summary>
/// <param name="With">The thinner's name.</param>
/// <param name="Share">How much.</param>
/// <param name="Of">Of what; null if the file does not say, so that nobody knows how much is meant.</param>
/// <param name="Place">Where the file says how much; null if it is not from a file.</param>
public sealed record Thinning(string With, Share Share, ShareOf? Of, Place? Place = null)
{
    /// <summary>Thinner as a share of the finished mix, whichever way it was given. Of two readings the one with less thinner.</summary>
    public double ShareOfMix => Of == ShareOf.Mix ? Share.Fraction : Share.Fraction / (1 + Share.Fraction);
}
