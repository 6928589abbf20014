using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Filler under paint that nobody smoothed.</summary>
public sealed class FilledNotSmoothed : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "What was filled is sanded before it is painted.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not null || LastFilled(surface) is not { } filled || IsSmoothedAfter(surface, filled.Step))
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"{{areas}} was filled and never smoothed: the repair shows through {coat.Name}.",
            "Add 'sand: {areas}' once the filler has cured.",
            new Pointer(filled.Step, "filled here"))
            .MendedBy(moment.PutFirst("sand"));
    }

    private static PreparationDone? LastFilled(Surface surface)
    {
        PreparationDone? last = null;
        foreach (var done in surface.Preparations)
        {
            if (done.What == Preparation.Filled)
                last = done;
        }

        return last;
    }

    private static bool IsSmoothedAfter(Surface surface, int step)
    {
        foreach (var done in surface.Preparations)
        {
            if (done.Step > step && done.What is Preparation.Sanded or Preparation.Trimmed)
                return true;
        }

        return false;
    }
}
