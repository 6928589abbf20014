using System.Text;
using NodaTime;
using NodaTime.Text;

namespace Pipeline.Engine;

/// <summary>Keeps the details of the program's own mistakes.</summary>
public interface IBreakdowns
{
    /// <summary>Writes a report.</summary>
    /// <returns>Its file, or null if none could be written.</returns>
    string? Report(string during, Exception fault);
}

/// <summary>One file per mistake in a folder, named after the moment.</summary>
/// <param name="disk">The disk.</param>
/// <param name="clock">The clock.</param>
/// <param name="folder">Where the reports go; made when needed.</param>
public sealed class BreakdownReports(IDisk disk, IClock clock, string folder) : IBreakdowns
{
    /// <inheritdoc/>
    public string? Report(string during, Exception fault)
    {
        var now = clock.GetCurrentInstant();
        var stamp = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmss'.'fffffff'Z'").Format(now);
        var file = Path.Combine(folder, $"breakdown-{stamp}.txt");
        var text = $"""
            {InstantPattern.ExtendedIso.Format(now)} {during}
            pipeline {typeof(BreakdownReports).Assembly.GetName().Version}, .NET {Environment.Version}, {Environment.OSVersion}

            {fault}

            """;
        return disk.MakeFolder(folder) is null && disk.Write(file, Encoding.UTF8.GetBytes(text)) is null ? file : null;
    }
}
