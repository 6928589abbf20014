using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>Changes to a route that rules offer. A brush reaches nothing else, so what is put in is brushed unless it must be misted.</summary>
internal static class Mends
{
    /// <summary>The verdict with its mend.</summary>
    public static Verdict MendedBy(this Verdict verdict, Mend? mend) => verdict with { Mend = mend };

    /// <summary>A new step straight before this one, on the areas of the verdict.</summary>
    public static Mend PutFirst(this Moment moment, string verb, params Particular[] particulars) =>
        new Mend.PutBefore(moment.Step.Place, new NewStep(verb, new Acting.TheAreas(), particulars.ToSequence()));

    /// <summary>A new step on the whole piece before the first of the route.</summary>
    public static Mend PutAtStart(this Moment moment, string verb, params Particular[] particulars) =>
        new Mend.PutBefore(moment.Route[0].Place, new NewStep(verb, new Acting.All(), particulars.ToSequence()));

    /// <summary>A coat of varnish from the shelf before this step; null if none there suits what it goes on.</summary>
    public static Mend? VarnishFirst(this Moment moment, Layer? top, Sheen atLeast) =>
        Varnish(moment, top, atLeast) is { } varnish ? moment.PutFirst("varnish", new("with", varnish.Name), new("by", "brush")) : null;

    /// <summary>Two mist coats of what this step lays wet, before it; null where the file's words for that are not known here.</summary>
    public static Mend? MistFirst(this Moment moment, Layer coat)
    {
        if (coat.Method != Method.Airbrush || coat.Paint is null || moment.Step.Scheme is not null || moment.Step.First<Deed.Lay>() is not { } lay)
            return null;
        Particular[] mist = [new("with", coat.Paint.Name), new("by", "airbrush"), new("body", "mist"), new("coats", "2")];
        // 'all' has been written out by now
        return lay.OversprayMeant.Count switch
        {
            var meant when meant == moment.Model.Areas.Count => moment.PutFirst(moment.Step.Verb, [.. mist, new("overspray", "all")]),
            0 => moment.PutFirst(moment.Step.Verb, mist),
            1 => moment.PutFirst(moment.Step.Verb, [.. mist, new("overspray", lay.OversprayMeant[0])]),
            _ => null,
        };
    }

    /// <summary>The step gets a key.</summary>
    public static Mend SetKey(this Moment moment, string key, string value) => new Mend.SetKey(moment.Step.Place, key, value);

    /// <summary>The only paint on the shelf that is called something like a word; null if there is none or several.</summary>
    public static Paint? OnlyPaintCalled(this Moment moment, string word)
    {
        Paint? only = null;
        foreach (var paint in moment.Shelf)
        {
            if (!paint.Name.Contains(word, StringComparison.OrdinalIgnoreCase))
                continue;
            if (only is not null)
                return null;
            only = paint;
        }

        return only;
    }

    /// <summary>True if two steps stand in the same route, or in the same following of the same scheme.</summary>
    public static bool IsBeside(this Step step, Step other) => step.Scheme == other.Scheme && step.FollowedFrom == other.FollowedFrom;

    /// <summary>A name or a count as the file writes it.</summary>
    public static string Written(int count) => count.ToString(CultureInfo.InvariantCulture);

    // water-based varnish lies on everything that is dry; a lacquer only on what bears its solvent. The glossier, the better a barrier.
    private static Paint? Varnish(Moment moment, Layer? top, Sheen atLeast)
    {
        Paint? best = null;
        foreach (var paint in moment.Shelf)
        {
            if (paint is not { Family: { IsVarnish: true, HasIsocyanate: false } family, IsMetallic: false } || paint.Sheen < atLeast || paint.Sheen > Sheen.Gloss)
                continue;
            var isWater = family.Carrier == Carrier.Water;
            if (!isWater && top?.IsHot() != true)
                continue;
            if (best is null || (isWater, paint.Sheen).CompareTo((best.Family.Carrier == Carrier.Water, best.Sheen)) > 0)
                best = paint;
        }

        return best;
    }
}
