using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Parts by volume to mL and drops.</summary>
public static class Mixing
{
    /// <summary>
    /// Every paint and the thinner of a mix for a volume of the finished mix: parts that can be counted out, and mL and drops as they are
    /// asked for to the drop. Whole parts may differ from these by a twentieth of the thinner.
    /// </summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="millilitres">How much of the finished mix.</param>
    public static Sequence<MixPart> Parts(Recipe recipe, double millilitres)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        var paintParts = recipe.Parts.Sum(part => part.Parts);
        var thinnerParts = ThinnerParts(recipe);
        var all = paintParts + thinnerParts;
        if (!(all > 0))
            return [];
        var (times, ofThinner) = thinnerParts > 0 ? WholeParts.Of([.. recipe.Parts.Select(part => part.Parts)], thinnerParts) : (1, 0);
        var parts = recipe.Parts.Select(part => Part(part.Paint.Name, part.Parts, part.Parts * times)).ToList();
        if (recipe.Thinner is { } thinner && thinnerParts > 0)
            parts.Add(Part(thinner.With, thinnerParts, ofThinner));
        return parts.ToSequence();

        MixPart Part(string name, double share, double said)
        {
            var volume = millilitres * share / all;
            return new MixPart(name, Math.Round(said, 2), Math.Round(volume, 2), (int)Math.Round(volume * PaintNeed.DropsPerMillilitre, MidpointRounding.AwayFromZero));
        }
    }

    /// <summary>
    /// The thinner in the same parts as the paints. 40 % of the mix is 40 parts to 60 of paint; 40 % of the paint is 40 parts to 100.
    /// </summary>
    public static double ThinnerParts(Recipe recipe)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        if (recipe.Thinner is not { } thinner)
            return 0;
        var paint = recipe.Parts.Sum(part => part.Parts);
        var share = Math.Min(thinner.ShareOfMix, 0.99);
        return paint * share / (1 - share);
    }

    /// <summary>What a volume of a paint or mix takes of the products on the shelf, mixes of mixes taken apart.</summary>
    public static IEnumerable<(string Name, double Millilitres, Volume? Stock)> Products(Paint paint, double millilitres)
    {
        ArgumentNullException.ThrowIfNull(paint);
        if (paint.Recipe is not { } recipe)
            return [(paint.Name, millilitres, paint.Stock)];
        var all = recipe.Parts.Sum(part => part.Parts) + ThinnerParts(recipe);
        if (!(all > 0))
            return [];
        var products = recipe.Parts.SelectMany(part => Products(part.Paint, millilitres * part.Parts / all));
        return recipe.Thinner is { } thinner ? products.Append((thinner.With, millilitres * ThinnerParts(recipe) / all, null)) : products;
    }
}
