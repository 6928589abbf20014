using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>The plugins in use, loaded when first asked for and then kept.</summary>
/// <param name="load">Loads them; called once.</param>
public sealed class PluginShelf(Func<(Trade Trade, Sequence<Finding> Findings)> load)
{
    private readonly Lazy<(Trade Trade, Sequence<Finding> Findings)> loaded = new(load);

    /// <summary>The plugins in some folders.</summary>
    public static PluginShelf Of(Sequence<string> folders) => new(() => PluginLoading.Load(folders));

    /// <summary>All that the plugins that work bring.</summary>
    public Trade Trade => loaded.Value.Trade;

    /// <summary>One for each plugin that does not.</summary>
    public Sequence<Finding> Findings => loaded.Value.Findings;
}
