using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>All that the plugins of the house and the walk bring, as the engine would hand it over.</summary>
internal static class HouseTrade
{
    /// <summary>What the plugins alone bring.</summary>
    public static Trade OfPlugins { get; } = new()
    {
        Verbs = Brought(AllPlugins.Verbs, verb => verb.Name),
        Families = Brought(AllPlugins.Families, family => family.Name),
        Materials = Brought(AllPlugins.Materials, material => material.Name),
        MaskMaterials = Brought(AllPlugins.MaskMaterials, material => material.Name),
        Rules = Brought(AllPlugins.Rules, rule => rule.Name),
        Compatibility = Brought(AllPlugins.Compatibility),
        Rewetting = Brought(AllPlugins.Rewetting),
        CleanOuts = Brought(AllPlugins.CleanOuts),
        Thinners = Brought(AllPlugins.Thinners),
        Settings = Brought(AllPlugins.Settings),
        Figures = Brought(AllPlugins.Figures),
    };

    /// <summary>That with the walk's own rules, sorted by name: all that a file can name.</summary>
    public static Trade Trade { get; } = OfPlugins with { Rules = Brought(AllPlugins.Rules.Concat(Walk.OwnRules.Select(rule => rule.Item)), rule => rule.Name) };

    private static Sequence<Brought<T>> Brought<T>(IEnumerable<T> items, Func<T, string> name) =>
        Brought(items.OrderBy(name, StringComparer.Ordinal));

    private static Sequence<Brought<T>> Brought<T>(IEnumerable<T> items) => items.Select(item => new Brought<T>("house", item)).ToSequence();
}
