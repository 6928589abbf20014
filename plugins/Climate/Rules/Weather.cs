using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>What the rules about air ask.</summary>
internal static class Weather
{
    /// <summary>The coat a step lays, if it is one that has to form a film: no decal, no loose powder, no tufts.</summary>
    public static Layer? Film(this Moment moment) =>
        moment.Step.Kind == StepKind.Coat && moment.Step.Coat() is { Family: not null, Role: not (LayerRole.Decal or LayerRole.Scatter) } coat ? coat : null;

    /// <summary>Steps in the bench's air share a cause; a step in air of its own has its own.</summary>
    public static string Where(this Moment moment) => moment.Step.Climate is null ? "bench" : moment.Step.Place.ToString();

    /// <summary>As a person says it.</summary>
    public static string Place(this Moment moment) => moment.Step.Climate is null ? "at the bench" : "where this is done";
}
