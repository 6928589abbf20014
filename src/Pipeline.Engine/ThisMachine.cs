using System.Text;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Serilog;

namespace Pipeline.Engine;

/// <summary>The engine's parts as this machine has them.</summary>
public static class ThisMachine
{
    /// <summary>The machine's disk and clock, the plugins of the usual folders, reports of breakdowns in the state folder.</summary>
    /// <param name="log">The log.</param>
    /// <param name="pluginFolders">Further folders of plugins.</param>
    public static EngineParts Parts(ILogger log, IEnumerable<string> pluginFolders)
    {
        return new EngineParts(
            new RealDisk(),
            SystemClock.Instance,
            log,
            PluginShelf.Of(PluginFolders.Usual(AppContext.BaseDirectory, Environment.GetEnvironmentVariable, pluginFolders)),
            Breakdowns);
    }

    /// <summary>Reports of the program's own mistakes, kept in the state folder.</summary>
    public static IBreakdowns Breakdowns => new BreakdownReports(new RealDisk(), SystemClock.Instance, StateFolder);

    /// <summary>Where the program keeps its state: <c>$XDG_STATE_HOME/pipeline</c> or <c>~/.local/state/pipeline</c>.</summary>
    public static string StateFolder => Path.Combine(BaseFolders.StateHome(Environment.GetEnvironmentVariable), "pipeline");
}

/// <summary>Reads the moment from which to plan.</summary>
public static class StartText
{
    private static readonly LocalDateTimePattern[] Patterns =
    [
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd' 'HH:mm"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd"),
    ];

    /// <summary>A date and time such as <c>2026-11-30 18:00</c>, or a date, meaning its first minute; null if the text is neither.</summary>
    public static LocalDateTime? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var pattern in Patterns)
        {
            if (pattern.Parse(text.Trim()) is { Success: true } read && read.Value.Year is >= 1970 and <= 9000)
                return read.Value;
        }

        return null;
    }
}

/// <summary>Writes a set of results into a folder, each whole or not at all.</summary>
public static class ResultFolder
{
    /// <summary>Writes them.</summary>
    /// <param name="disk">The disk.</param>
    /// <param name="folder">Made if it is not there.</param>
    /// <param name="files">Name and text of each.</param>
    /// <returns>The paths written, and why the next one could not be.</returns>
    public static (Sequence<string> Written, Refusal? Refusal) Write(IDisk disk, string folder, IEnumerable<(string Name, string Text)> files)
    {
        ArgumentNullException.ThrowIfNull(disk);
        ArgumentNullException.ThrowIfNull(files);
        var written = new List<string>();
        if (disk.MakeFolder(folder) is { } refusal)
            return ([], refusal);
        foreach (var (name, text) in files)
        {
            var path = Path.Combine(folder, name);
            if (disk.Write(path, Encoding.UTF8.GetBytes(text)) is { } why)
                return (written.ToSequence(), why);
            written.Add(path);
        }

        return (written.ToSequence(), null);
    }
}
