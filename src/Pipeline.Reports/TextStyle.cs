using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>How a text report is set. The default is what a pipe gets: 80 columns, no colour, no drawing characters.</summary>
public sealed record TextStyle
{
    /// <summary>What a pipe, a file or a log gets.</summary>
    public static TextStyle Plain { get; } = new();

    /// <summary>Columns of the page, from 72 to 120; other values are brought into that range.</summary>
    public int Width { get; init => field = Math.Clamp(value, 72, 120); } = 80;

    /// <summary>Whether headings, warnings and side remarks are coloured. Nothing is said by colour alone.</summary>
    public bool Colour { get; init; }

    /// <summary>Whether bars and rules are drawn with block and line characters instead of ASCII.</summary>
    public bool Drawn { get; init; }

    /// <summary>Whether a finding shows its line of the file with a mark under the place.</summary>
    public bool WithSource { get; init; }

    /// <summary>
    /// What suits a console. Colour, drawing and the lines of the file are for a terminal a person looks at;
    /// <c>NO_COLOR</c> has already been weighed by the console's colour system.
    /// </summary>
    public static TextStyle For(IAnsiConsole console)
    {
        ArgumentNullException.ThrowIfNull(console);
        var profile = console.Profile;
        return new TextStyle
        {
            Width = profile.Out.IsTerminal ? profile.Width : 80,
            Colour = profile.Capabilities.Ansi && profile.Capabilities.ColorSystem != ColorSystem.NoColors,
            Drawn = profile.Out.IsTerminal && profile.Capabilities.Unicode,
            WithSource = profile.Out.IsTerminal,
        };
    }
}
