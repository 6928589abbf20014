using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Names in a scheme before any model follows it: only placeholders, <c>all</c> and the file's paints mean something.</summary>
internal sealed class SchemeNames(Desk desk, Shelf shelf, SchemeForm scheme) : StepNames(desk, shelf)
{
    private static readonly AreaNames SomeAreas = new([]);

    /// <summary>Stands for any paint; nothing ever looks into it.</summary>
    private static readonly Paint SomePaint = new()
    {
        Name = "",
        Place = new Place("", 1, 1),
        Family = new Family { Name = "", Carrier = Carrier.None, Thin = NoTimes, Heavy = NoTimes, Source = "" },
        Thin = NoTimes,
        Heavy = NoTimes,
        Effect = NoTimes,
    };

    private static DryingTable NoTimes => new(null, null, null, null, null, null);

    /// <summary>Checks the names and values of one step.</summary>
    public void Check(RouteItem.Step step)
    {
        if (step.Verb.Target == Target.Masks)
        {
            foreach (var node in Desk.OneOrMore(step.Target, "the masks to take off"))
                Mask(node);
        }
        else
        {
            Areas(step.Target);
        }

        for (var i = 0; i < step.Own.Length; i++)
        {
            if (step.Own[i] is { } given)
                ParticularReader.Read(this, step.Verb.Particulars[i], given.Value);
        }
    }

    public override AreaNames? Areas(SyntaxNode node)
    {
        var areAllKnown = true;
        foreach (var item in Desk.OneOrMore(node, "one or more of the scheme's areas, or all"))
        {
            if (Desk.Text(item, "one of the scheme's areas, or all") is not { } name)
                areAllKnown = false;
            else if (name != "all" && !scheme.Areas.Contains(name))
            {
                Desk.UnknownName(item, name, $"area in the scheme ‘{scheme.Name}’", scheme.Areas.Append("all"), "Name it under the scheme's ‘areas’.");
                areAllKnown = false;
            }
        }

        return areAllKnown ? SomeAreas : null;
    }

    /// <summary>What a placeholder of a followed scheme is bound to.</summary>
    public AreaNames? BindArea(SyntaxNode node) => Areas(node);

    public override Paint? Paint(SyntaxNode node)
    {
        if (Desk.Text(node, "the name of a paint or mix") is not { } name)
            return null;
        if (scheme.Paints.Contains(name))
            return SomePaint;
        if (Shelf.Paint(name) is { } paint)
            return paint;
        if (Shelf.IsBroken(name))
            return SomePaint;
        Desk.UnknownName(node, name, "paint or mix", Shelf.PaintNames.Concat(scheme.Paints), "The file names no paint; add it under ‘paints’.");
        return null;
    }

    /// <summary>A mask may have been put on by the route around the scheme, so which ones there are is only known where it is followed.</summary>
    public override MaskName? Mask(SyntaxNode node) => Desk.Text(node, "the name of a mask") is { } name ? new MaskName(name) : null;

    public override string? Text(SyntaxNode node) => Desk.Text(node, "a text");
}
