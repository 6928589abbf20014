using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Glue goes on painted faces.</summary>
public sealed class GlueOnPaint : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The faces of a glued joint are bare.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Join>() is not null || step.First<Deed.Prepare>() is { What: Preparation.Glued };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var (isPainted, what) = deed switch
            {
                Deed.Join { Glue: not null } join => (join.Faces == JointFaces.Painted, join.Parts.Spoken()),
                Deed.Prepare { What: Preparation.Glued } glue =>
                    (glue.Faces == JointFaces.Painted || (glue.Faces is null && IsPaintedAllOver(moment)), "{areas}"),
                _ => (false, ""),
            };
            if (!isPainted)
                continue;
            yield return moment.Says(
                Level.Error,
                moment.Step.Areas,
                $"The joint of {what} is glued on paint: the glue holds the paint, and the paint comes off.",
                "Mask the faces before painting or scrape them bare, and say 'faces: bare'; pin what bears weight.");
        }
    }

    // parts glued after they were painted, and nothing said of bare faces
    private static bool IsPaintedAllOver(Moment moment)
    {
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            if (surface.IsMasked || !(surface.Has(LayerRole.Undercoat) || surface.Has(LayerRole.Colour) || surface.Has(LayerRole.Varnish)))
                return false;
        }

        return !moment.Step.Areas.IsEmpty;
    }
}
