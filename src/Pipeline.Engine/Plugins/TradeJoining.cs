using System.Reflection;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Joins what several plugins bring.</summary>
public static class TradeJoining
{
    /// <summary>
    /// One trade from many. Of two things with one name the first plugin's stays, and a finding names both plugins. Rows of tables are kept
    /// in the order of the plugins.
    /// </summary>
    /// <param name="plugins">Each plugin's name, the file it came from and what it brings. Earlier ones keep names that later ones bring too; of rows about the same thing the later counts.</param>
    public static (Trade Trade, Sequence<Finding> Findings) Join(IEnumerable<(string Plugin, string File, Trade Trade)> plugins)
    {
        ArgumentNullException.ThrowIfNull(plugins);
        var findings = new List<Finding>();
        var all = plugins.ToList();
        return (
            new Trade
            {
                Verbs = Joined("verb", all, trade => trade.Verbs, verb => verb.Name, findings),
                Rules = Joined("rule", all, trade => trade.Rules, rule => rule.Name, findings),
                Families = Joined("coating family", all, trade => trade.Families, family => family.Name, findings),
                Materials = Joined("material", all, trade => trade.Materials, material => material.Name, findings),
                MaskMaterials = Joined("mask material", all, trade => trade.MaskMaterials, mask => mask.Name, findings),
                Compatibility = InOrder(all, trade => trade.Compatibility),
                Rewetting = InOrder(all, trade => trade.Rewetting),
                CleanOuts = InOrder(all, trade => trade.CleanOuts),
                Thinners = InOrder(all, trade => trade.Thinners),
                Settings = InOrder(all, trade => trade.Settings),
                Figures = InOrder(all, trade => trade.Figures),
            },
            findings.ToSequence());
    }

    /// <summary>
    /// The trade of plugins that are already loaded, for programs and tests that reference them directly. The plugin's name
    /// is the last word of the assembly's.
    /// </summary>
    /// <exception cref="InvalidOperationException">One cannot be used, or two bring the same; the message says which.</exception>
    public static Trade TradeOf(params IEnumerable<Assembly> assemblies)
    {
        ArgumentNullException.ThrowIfNull(assemblies);
        var read = assemblies
            .Select(assembly => (Plugin: NameOf(assembly), Assembly: assembly))
            .OrderBy(each => each.Plugin, StringComparer.Ordinal)
            .Select(each => (each.Plugin, File: each.Plugin, PluginReading.Read(each.Plugin, each.Assembly) switch
            {
                PluginRead.Works works => works.Trade,
                PluginRead.Fails fails => throw new InvalidOperationException($"The plugin {each.Plugin} cannot be used: {fails.Why}"),
                var other => throw new InvalidOperationException($"Unknown outcome {other}."),
            }));
        var (trade, findings) = Join(read);
        return findings.IsEmpty ? trade : throw new InvalidOperationException(string.Join('\n', findings.Select(finding => finding.Message)));
    }

    private static string NameOf(Assembly assembly)
    {
        var full = assembly.GetName().Name ?? "unnamed";
        return full[(full.LastIndexOf('.') + 1)..];
    }

    // rows about the same thing stand one after the other, and the last of them counts
    private static Sequence<Brought<T>> InOrder<T>(List<(string Plugin, string File, Trade Trade)> plugins, Func<Trade, Sequence<Brought<T>>> rowsOf) =>
        plugins.SelectMany(each => rowsOf(each.Trade)).ToSequence();

    private static Sequence<Brought<T>> Joined<T>(
        string what,
        List<(string Plugin, string File, Trade Trade)> plugins,
        Func<Trade, Sequence<Brought<T>>> listOf,
        Func<T, string> nameOf,
        List<Finding> findings)
    {
        var byName = new SortedDictionary<string, Brought<T>>(StringComparer.Ordinal);
        foreach (var (plugin, file, trade) in plugins)
        {
            foreach (var item in listOf(trade))
            {
                var name = nameOf(item.Item);
                if (byName.TryGetValue(name, out var first))
                    findings.Add(Twice(what, name, first.Plugin, plugin, file));
                else
                    byName.Add(name, item);
            }
        }

        return byName.Values.ToSequence();
    }

    private static Finding Twice(string what, string name, string first, string second, string file) => new()
    {
        Level = Level.Error,
        Place = new Place(file, 1, 1),
        Message = $"The plugins {first} and {second} both bring the {what} '{name}'; that of {first} is used.",
        Remedy = "Take one of the two plugins out, or rename one.",
    };
}
