using NodaTime;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Mixes as a painter measures them.</summary>
internal static class Mixes
{
    /// <summary>What is mixed: <c>thin rust, 8.0 mL, use by 20:31, also for Rui</c>.</summary>
    public static string Head(MixOrder mix, LocalDate date) => Visible.Line(
        $"{mix.Name}, {Amounts.Volume(mix.Millilitres)}{(mix.UseBy is { } by ? $", use by {Moments.From(date, by)}" : "")}"
        + (mix.AlsoFor.IsEmpty ? "" : $", also for {string.Join(", ", mix.AlsoFor)}"));

    /// <summary>What the parts measure, in their order. They add up to what is said of the whole: what is cut off goes to those of which most was (largest remainder).</summary>
    public static IReadOnlyList<string> Measures(MixOrder mix)
    {
        // as finely as the whole is said
        var step = mix.Millilitres >= 100 ? 1 : 0.1;
        var exact = mix.Parts.Select(part => part.Millilitres / step).ToList();
        var whole = exact.ConvertAll(steps => (long)Math.Floor(steps + 1e-6));
        var left = (int)Math.Clamp((long)Math.Round(mix.Millilitres / step, MidpointRounding.AwayFromZero) - whole.Sum(), 0, whole.Count);
        foreach (var i in Enumerable.Range(0, whole.Count).OrderByDescending(i => Math.Round(exact[i] - whole[i], 6)).ThenBy(i => i).Take(left))
            whole[i]++;
        return [.. whole.Select((steps, i) => Amounts.Volume(steps == 0 ? Math.Min(mix.Parts[i].Millilitres, step / 2.1) : steps * step))];
    }

    /// <summary>Where a task takes its paint from, if another painter has mixed it: <c>, mixed by Ana</c>.</summary>
    public static string MixedBy(PaintUse paint) => paint.MixedBy is { } painter ? $", mixed by {painter}" : "";
}
