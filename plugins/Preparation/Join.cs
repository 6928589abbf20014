using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Join"/>.</summary>
public sealed record Joining(
    [Says("What with; by default styrene cement on styrene, white glue on porous material, superglue on the rest.")] Glue? Using = null,
    [Says("Areas that brush and spray can no longer reach once the parts are joined.")] AreaNames? Hides = null,
    [Says("How the faces of the joint are: bare (masked or scraped) or painted.")] JointFaces? Faces = null,
    [Says("The joint is pinned.")] bool Pinned = false,
    [Says("The joint bears weight or sticks out far.")] bool Loaded = false,
    [Says("Moving air carries the glue's vapour away from finished surfaces.")] bool Airflow = false);

/// <summary>Joins parts.</summary>
public sealed class Join : Verb<Joining>
{
    private static readonly Effort PerJoint = new(2.5, 0.03, 40, 0.004);

    /// <inheritdoc/>
    public override string Name => "join";

    /// <inheritdoc/>
    public override string Summary => "Joins parts that were painted apart.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    public override Target Target => Target.Parts;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Joining particulars)
    {
        if (job.Named.Count < 2)
            throw new ParticularException("", "A join takes two parts or more, such as join: [body, arm].");
        var glue = particulars.Using ?? Glues.Suiting(job);
        var row = job.SettingOf(glue);
        return new Intent(
            [
                new Deed.Join(job.Named, particulars.Hides?.Names ?? [], row.Sets, row.Carrier)
                {
                    IsFromFile = row.IsFromFile,
                    Glue = glue,
                    Faces = particulars.Faces,
                    IsPinned = particulars.Pinned,
                    IsLoaded = particulars.Loaded,
                    HasAirflow = particulars.Airflow,
                },
            ],
            new Work
            {
                PerUnit = PerJoint.For(job.Size) * (job.Named.Count - 1),
                SetUp = new Attended(2),
                PutAway = new Attended(3),
            })
        {
            Cautions = [.. Cautions.Of(glue)],
        };
    }
}
