using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>How much paint the batch takes.</summary>
internal static class Amounts
{
    /// <summary>mL of each paint and mix that the routes lay, by name, as laid and past the piece, and with what stays in cup and brush.</summary>
    public static Dictionary<string, (Paint Paint, double OnAndPast, double WithLosses)> Needed(this BatchView batch)
    {
        var needs = new Dictionary<string, (Paint Paint, double OnAndPast, double WithLosses)>(StringComparer.Ordinal);
        foreach (var route in batch.Routes)
        {
            foreach (var moment in route.Moments)
            {
                if (moment.Step.Coat() is not { Paint: { } paint } coat)
                    continue;
                var need = PaintNeed.Of(coat, moment.SizeOfStep(), route.Model.Size, route.Model.Count, batch.Cup);
                var before = needs.GetValueOrDefault(paint.Name);
                needs[paint.Name] = (paint, before.OnAndPast + need.OnAndPast, before.WithLosses + need.Millilitres);
            }
        }

        return needs;
    }

    /// <summary>The size of what a step names, of one unit.</summary>
    public static SurfaceSize SizeOfStep(this Moment moment) =>
        new(moment.Model.Areas.Where(area => moment.Step.Areas.Contains(area.Name)).Sum(area => area.Size.SquareCentimetres));

    /// <summary>The thinner of a recipe, in the same parts as its paints.</summary>
    public static double ThinnerParts(this Recipe recipe)
    {
        var share = Math.Min(recipe.Thinner?.ShareOfMix ?? 0, 0.99);
        return recipe.Parts.Sum(part => part.Parts) * share / (1 - share);
    }

    /// <summary>What a volume of a paint or mix takes of the pots on the shelf, mixes of mixes taken apart.</summary>
    public static IEnumerable<(Paint Pot, double Millilitres)> Pots(this Paint paint, double millilitres)
    {
        if (paint.Recipe is not { } recipe)
            return [(paint, millilitres)];
        var all = recipe.Parts.Sum(part => part.Parts) + recipe.ThinnerParts();
        return recipe.Parts.SelectMany(part => part.Paint.Pots(millilitres * part.Parts / all));
    }
}
