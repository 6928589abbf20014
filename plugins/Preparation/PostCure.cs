using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Cures a print through.</summary>
public sealed class PostCure : Verb<NoParticulars>
{
    /// <inheritdoc/>
    public override string Name => "post-cure";

    /// <inheritdoc/>
    public override string Summary => "Cures a print through under ultraviolet light, once it is washed and dry.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars)
    {
        return new Intent(
            [new Deed.Prepare(Preparation.PostCured)],
            Baths.WorkOf(new Attended(1), job.Model.Count, bath: new Drying(90), setUp: 5, putAway: 5) with { Aids = ["curing lamp"] })
        {
            Cautions = [Cautions.UltravioletLight, Cautions.SkinSensitiser, Cautions.Waste],
        };
    }
}
