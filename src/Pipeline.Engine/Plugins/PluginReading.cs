using System.Reflection;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>What reading a plugin's assembly gave.</summary>
public abstract record PluginRead
{
    private protected abstract void Closed();

    /// <summary>Everything the plugin brings.</summary>
    /// <param name="Trade">Each list sorted by name.</param>
    public sealed record Works(Trade Trade) : PluginRead
    {
        private protected override void Closed() { }
    }

    /// <summary>The plugin cannot be used; nothing of it is.</summary>
    /// <param name="Why">What is wrong, as a sentence that goes on from "the plugin cannot be used:".</param>
    public sealed record Fails(string Why) : PluginRead
    {
        private protected override void Closed() { }
    }
}

/// <summary>Reads what a plugin brings from the exported sealed types of its assembly.</summary>
public static class PluginReading
{
    /// <summary>
    /// Makes one of each exported sealed class that is a verb, a rule or a catalogue. A plugin is used whole or not at all:
    /// if one of its classes fails, none is used. Never throws, whatever the plugin does.
    /// </summary>
    /// <param name="plugin">The plugin's name, for what goes wrong.</param>
    /// <param name="assembly">Its assembly, loaded against this program's contract.</param>
    public static PluginRead Read(string plugin, Assembly assembly)
    {
        ArgumentNullException.ThrowIfNull(plugin);
        ArgumentNullException.ThrowIfNull(assembly);
        try
        {
            return new PluginRead.Works(Gather(plugin, assembly));
        }
        catch (PluginException fault)
        {
            return new PluginRead.Fails(fault.Message);
        }
        catch (Exception fault)
        {
            return new PluginRead.Fails(Faults.InWords(fault));
        }
    }

    private static Trade Gather(string plugin, Assembly assembly)
    {
        var trade = new TradeMaking(plugin);
        foreach (var type in assembly.GetExportedTypes().Where(IsOffered).OrderBy(type => type.FullName, StringComparer.Ordinal))
        {
            try
            {
                trade.Add(Made(type));
            }
            catch (PluginException)
            {
                throw;
            }
            catch (Exception fault)
            {
                throw new PluginException($"its class {type.Name} failed: {Faults.InWords(fault)}", fault);
            }
        }

        return trade.Made();
    }

    private static bool IsOffered(Type type) =>
        type is { IsSealed: true, IsAbstract: false, IsGenericTypeDefinition: false }
        && (typeof(Verb).IsAssignableFrom(type) || typeof(Rule).IsAssignableFrom(type) || IsCatalogue(type));

    private static bool IsCatalogue(Type type)
    {
        for (var up = type.BaseType; up is not null; up = up.BaseType)
        {
            if (up.IsGenericType && up.GetGenericTypeDefinition() == typeof(Catalogue<>))
                return true;
        }

        return false;
    }

    private static object Made(Type type)
    {
        if (type.GetConstructor(Type.EmptyTypes) is not { } constructor)
            throw new PluginException($"its class {type.Name} has no public constructor without parameters");
        return constructor.Invoke(null);
    }
}
