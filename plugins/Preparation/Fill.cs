using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Fill"/>.</summary>
public sealed record Filling(
    [Says("What with.")] Filler Using = Filler.EpoxyPutty,
    [Says("The time it cures before it can be sanded, where the default is not yours.")] DryingRange? Cures = null);

/// <summary>Fills gaps.</summary>
public sealed class Fill : Verb<Filling>
{
    private static readonly Effort PerUnit = new(1, 0.05, 40, 0.0025);

    /// <inheritdoc/>
    public override string Name => "fill";

    /// <inheritdoc/>
    public override string Summary => "Fills gaps and pits; sand once it has cured.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Filling particulars)
    {
        var row = job.Tables.Setting(Fillers.Spoken(particulars.Using));
        var cures = particulars.Cures ?? row.Sets;
        return new Intent(
            [
                new Deed.Prepare(Preparation.Filled, cures, row.Carrier)
                {
                    With = row.Name,
                    IsFromFile = particulars.Cures is not null || row.IsFromFile,
                    Sandable = particulars.Cures ?? row.Sandable ?? cures,
                },
            ],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(3), PutAway = new Attended(2) })
        {
            Cautions = [.. Fillers.CautionsOf(particulars.Using)],
        };
    }
}
