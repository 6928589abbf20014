using McMaster.NETCore.Plugins;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>
/// Loads plugins from disk. A plugin is a folder NAME that holds <c>Pipeline.Plugins.NAME.dll</c> or <c>NAME.dll</c>. Each that
/// cannot be used gives one finding that names it; the others work.
/// </summary>
public static class PluginLoading
{
    private const string NamePrefix = "Pipeline.Plugins.";

    /// <summary>All plugins of the folders; earlier folders win, within one folder the order is that of the names.</summary>
    /// <param name="folders">Folders that hold a folder per plugin; one that does not exist holds none.</param>
    public static (Trade Trade, Sequence<Finding> Findings) Load(IEnumerable<string> folders)
    {
        ArgumentNullException.ThrowIfNull(folders);
        var findings = new List<Finding>();
        var loaded = new Dictionary<string, (string Plugin, string File, Trade Trade)>(StringComparer.Ordinal);
        foreach (var folder in folders.Distinct(StringComparer.Ordinal).SelectMany(each => FoldersIn(each, findings)))
        {
            var plugin = Path.GetFileName(folder);
            if (loaded.TryGetValue(plugin, out var first))
            {
                findings.Add(Cannot(plugin, folder, $"a plugin of this name was already found at {first.File}, and that one is used"));
                continue;
            }

            if (MainFile(folder, plugin) is not { } file)
            {
                findings.Add(Cannot(plugin, folder, $"the folder holds no {NamePrefix}{plugin}.dll"));
                continue;
            }

            switch (LoadOne(plugin, file))
            {
                case PluginRead.Works works:
                    loaded.Add(plugin, (plugin, file, works.Trade));
                    break;
                case PluginRead.Fails fails:
                    findings.Add(Cannot(plugin, file, fails.Why));
                    break;
            }
        }

        var (trade, duplicates) = TradeJoining.Join(loaded.Values);
        return (trade, findings.Concat(duplicates).ToSequence());
    }

    private static IEnumerable<string> FoldersIn(string folder, List<Finding> findings)
    {
        try
        {
            return Directory.Exists(folder) ? Directory.GetDirectories(folder).Order(StringComparer.Ordinal) : [];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            findings.Add(new Finding
            {
                Level = Level.Error,
                Place = new Place(folder, 1, 1),
                Message = $"The folder of plugins cannot be read: {Faults.InWords(fault)}.",
                Remedy = "See that you may read the folder.",
            });
            return [];
        }
    }

    private static string? MainFile(string folder, string plugin) =>
        new[] { $"{NamePrefix}{plugin}.dll", $"{plugin}.dll" }
            .Select(name => Path.Combine(folder, name))
            .FirstOrDefault(File.Exists);

    private static PluginRead LoadOne(string plugin, string file)
    {
        try
        {
            // before loading: code against another contract fails in ways that say nothing
            if (ContractVersion.BuiltAgainst(file) is not { } version)
                return new PluginRead.Fails("it does not use the contract Pipeline.Abstractions");
            if (!ContractVersion.Fits(version))
            {
                return new PluginRead.Fails(
                    $"it was built for version {version.ToString(2)} of the contract, this program has {ContractVersion.OfProgram.ToString(2)}");
            }

            var loader = PluginLoader.CreateFromAssemblyFile(file, [typeof(Verb)], config => config.LoadInMemory = true);
            return PluginReading.Read(plugin, loader.LoadDefaultAssembly());
        }
        catch (BadImageFormatException)
        {
            return new PluginRead.Fails("the file is damaged or is not a .NET assembly");
        }
        catch (Exception fault)
        {
            return new PluginRead.Fails(Faults.InWords(fault));
        }
    }

    private static Finding Cannot(string plugin, string file, string why) => new()
    {
        Level = Level.Error,
        Place = new Place(file, 1, 1),
        Message = $"The plugin {Faults.OnOneLine(plugin)} cannot be used: {why}.",
        Remedy = "Build the plugin again for this program, or take its folder out.",
    };
}
