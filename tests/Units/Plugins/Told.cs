using Pipeline.Abstractions;
using static System.FormattableString;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Tells what a step means in one line, so that cases read as a table.</summary>
internal static class Told
{
    public static string Deeds(Intent intent) => intent.Deeds.IsEmpty ? "nothing" : string.Join("; ", intent.Deeds.Select(DeedOf));

    public static string Work(Intent intent)
    {
        var work = intent.Work;
        return Line(
            Invariant($"{work.PerUnit.Minutes:0.#} min{(work.Together ? " together" : "")}"),
            work.Passes > 1 ? Invariant($"{work.Passes} passes") : null,
            work.SetUp.Minutes + work.PutAway.Minutes > 0 ? Invariant($"set up {work.SetUp.Minutes:0.#}/{work.PutAway.Minutes:0.#}") : null,
            work.Unattended.Minutes > 0 ? $"alone {work.Unattended}" : null,
            work.Tool is null ? null : $"{work.Tool} with {work.Load?.Name}",
            work.NeedsDryingPlace ? "rack" : null);
    }

    private static string DeedOf(Deed deed) => deed switch
    {
        Deed.Prepare done => Line(
            $"{done.What}",
            done.With is null ? null : $"with {done.With}",
            done.Settles is { } settles ? $"settles {settles} ({done.Carrier})" : null,
            done.Sandable is { } sandable ? $"sandable {sandable}" : null,
            done.Faces is { } faces ? $"{faces} faces" : null,
            done.IsPinned ? "pinned" : null,
            done.IsLoaded ? "loaded" : null,
            done.HasAirflow ? "airflow" : null,
            done.IsUltrasonic ? "ultrasonic" : null,
            done.IsWet is { } wet ? wet ? "wet" : "dry" : null),
        Deed.Join join => Line(
            $"joins {join.Parts}",
            join.Hides.IsEmpty ? null : $"hides {join.Hides}",
            $"{join.Glue} settles {join.Settles} ({join.Carrier})",
            join.Faces is { } faces ? $"{faces} faces" : null,
            join.IsPinned ? "pinned" : null,
            join.IsLoaded ? "loaded" : null,
            join.HasAirflow ? "airflow" : null),
        Deed.Lay { Layer: var layer } lay => Line(
            $"{layer.Role} {layer.Name} by {layer.Method}",
            $"{layer.Coats} {layer.Body}",
            layer.Technique == Technique.Plain ? null : $"{layer.Technique}",
            layer.IsWetInWet ? "wet-in-wet" : null,
            layer.IsMeantToStain ? "stains" : null,
            $"recoatable {layer.TimeTo(DryingState.Recoatable)}",
            lay.OversprayMeant.IsEmpty ? null : $"overspray {lay.OversprayMeant}"),
        Deed.PutMaskOn mask => $"mask {mask.Mask} of {mask.Material.Name}" + (mask.Over is null ? "" : $" over {mask.Over}"),
        Deed.TakeMaskOff mask => $"takes off {mask.Mask}",
        Deed.CleanBack back => Line($"cleans back with {back.With} ({back.Dissolves})", back.Of is null ? null : $"the {back.Of}"),
        Deed.Strip strip => Line(
            $"strips with {strip.With} ({strip.Dissolves})",
            strip.IsUltrasonic ? "ultrasonic" : null,
            strip.Settles is { } damp ? $"damp {damp}" : null),
        Deed.Await awaits => Line($"awaits {awaits.State}", awaits.Heat is null ? null : $"at {awaits.Heat}"),
        Deed.Rest rest => Line($"rests {rest.Time}", rest.Heat is null ? null : $"at {rest.Heat}"),
        Deed.SoftenDecal => "softens decals",
        Deed.Handle => "handles",
        _ => throw new ArgumentOutOfRangeException(nameof(deed), deed, "A new kind of deed."),
    };

    private static string Line(params string?[] words) => string.Join(", ", words.OfType<string>());
}
