using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="GlueUp"/>.</summary>
public sealed record Gluing(
    [Says("What with; by default styrene cement on styrene, white glue on porous material, superglue on the rest.")] Glue? Using = null,
    [Says("How the faces of the joint are: bare (masked or scraped) or painted.")] JointFaces? Faces = null,
    [Says("The joint is pinned.")] bool Pinned = false,
    [Says("The joint bears weight or sticks out far.")] bool Loaded = false,
    [Says("Moving air carries the glue's vapour away from finished surfaces.")] bool Airflow = false);

/// <summary>Glues parts together.</summary>
public sealed class GlueUp : Verb<Gluing>
{
    private static readonly Effort PerUnit = new(2, 0.08, 40, 0.03);

    /// <inheritdoc/>
    public override string Name => "glue";

    /// <inheritdoc/>
    public override string Summary => "Glues parts together before painting.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Gluing particulars)
    {
        var glue = particulars.Using ?? Glues.Suiting(job);
        var row = job.SettingOf(glue);
        return new Intent(
            [
                new Deed.Prepare(Preparation.Glued, row.Sets, row.Carrier)
                {
                    With = row.Name,
                    Glue = glue,
                    Sandable = row.Sandable,
                    IsFromFile = row.IsFromFile,
                    Faces = particulars.Faces,
                    IsPinned = particulars.Pinned,
                    IsLoaded = particulars.Loaded,
                    HasAirflow = particulars.Airflow,
                },
            ],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(2), PutAway = new Attended(3) })
        {
            Cautions = [.. Cautions.Of(glue)],
        };
    }
}
