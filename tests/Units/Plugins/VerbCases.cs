using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>One step as a painter would write it, and what it must mean.</summary>
internal sealed record VerbCase(string Says, Verb Verb, object Particulars, Job Job, string Deeds, string Work)
{
    public Intent Intend() => Verb.Intend(Job, Particulars);

    public override string ToString() => Says;
}

/// <summary>Every verb at work. Six resin figures of 30 cm² unless the case says otherwise.</summary>
internal static class VerbCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        .. PreparationCases.All, .. CoatsCases.All, .. MaskingCases.All, .. DecalsCases.All,
        .. WeatheringCases.All, .. VarnishCases.All, .. BasingCases.All, .. FinishingCases.All,
    ];
}
