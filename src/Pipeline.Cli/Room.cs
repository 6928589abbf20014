using System.CommandLine;
using Pipeline.Engine;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace Pipeline.Cli;

/// <summary>The engine with what the common options ask for; the only place where the two are put together.</summary>
/// <param name="Parts">The engine's parts; null if the options cannot be used.</param>
/// <param name="Refusal">Why not.</param>
internal sealed record Room(EngineParts? Parts, Refusal? Refusal)
{
    private const string Lines = "{Timestamp:yyyy-MM-dd HH:mm:ss} {Level:u4} {Message:lj}{NewLine}{Exception}";

    /// <summary>Reads the common options.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="usualLog">What is logged if no option says.</param>
    public static Room Of(ParseResult parsed, string usualLog = "warning")
    {
        var plugins = parsed.GetValue(CommonWords.Plugins) ?? [];
        if (plugins.FirstOrDefault(folder => !Directory.Exists(folder)) is { } missing)
            return new Room(null, new Refusal($"there is no folder of plugins {missing}", "Give --plugins a folder that holds a folder per plugin."));
        try
        {
            return new Room(ThisMachine.Parts(LogTo(parsed.GetValue(CommonWords.Log) ?? usualLog, parsed.GetValue(CommonWords.LogFile)), plugins), null);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new Room(null, new Refusal($"cannot write the log: {fault.Message}", "Give --log-file a file you may write."));
        }
    }

    private static Logger LogTo(string level, string? file)
    {
        var log = new LoggerConfiguration().MinimumLevel.Is(level switch
        {
            "quiet" => LevelAlias.Off,
            "error" => LogEventLevel.Error,
            "information" => LogEventLevel.Information,
            "debug" => LogEventLevel.Debug,
            _ => LogEventLevel.Warning,
        });
        if (file is null)
        {
            log.WriteTo.Console(
                outputTemplate: Lines,
                formatProvider: System.Globalization.CultureInfo.InvariantCulture,
                standardErrorFromLevel: LogEventLevel.Verbose,
                theme: Serilog.Sinks.SystemConsole.Themes.ConsoleTheme.None);
            return log.CreateLogger();
        }

        // the sink is silent about a file it cannot open; we are not
        using (File.Open(file, FileMode.Append, FileAccess.Write, FileShare.ReadWrite))
        {
        }

        if (file.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
            log.WriteTo.File(new CompactJsonFormatter(), file, shared: true);
        else
            log.WriteTo.File(file, outputTemplate: Lines, formatProvider: System.Globalization.CultureInfo.InvariantCulture, shared: true);
        return log.CreateLogger();
    }
}
