using Pipeline.Abstractions;

namespace Pipeline.Engine;

/// <summary>Where plugins are looked for. Each folder holds one folder per plugin.</summary>
public static class PluginFolders
{
    /// <summary>
    /// The usual folders, earlier ones winning: <c>plugins</c> beside the program, then the painter's own,
    /// <c>$XDG_DATA_HOME/pipeline/plugins</c> (<c>~/.local/share/pipeline/plugins</c>), then the ones asked for.
    /// </summary>
    /// <param name="program">The folder of the program.</param>
    /// <param name="environment">Reads an environment variable.</param>
    /// <param name="askedFor">Further folders.</param>
    public static Sequence<string> Usual(string program, Func<string, string?> environment, IEnumerable<string> askedFor) =>
    [
        Path.Combine(program, "plugins"),
        Path.Combine(BaseFolders.DataHome(environment), "pipeline", "plugins"),
        .. askedFor.Select(Path.GetFullPath),
    ];
}

/// <summary>The base folders of the XDG Base Directory Specification 0.8; a value that is not absolute is ignored, as it asks.</summary>
public static class BaseFolders
{
    /// <summary>Data: <c>$XDG_DATA_HOME</c> or <c>~/.local/share</c>.</summary>
    public static string DataHome(Func<string, string?> environment) => Of(environment, "XDG_DATA_HOME", ".local", "share");

    /// <summary>State such as logs: <c>$XDG_STATE_HOME</c> or <c>~/.local/state</c>.</summary>
    public static string StateHome(Func<string, string?> environment) => Of(environment, "XDG_STATE_HOME", ".local", "state");

    private static string Of(Func<string, string?> environment, string variable, params ReadOnlySpan<string> underHome)
    {
        ArgumentNullException.ThrowIfNull(environment);
        if (environment(variable) is { Length: > 0 } said && Path.IsPathFullyQualified(said))
            return said;
        var home = environment("HOME") is { Length: > 0 } set && Path.IsPathFullyQualified(set)
            ? set
            : Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return Path.Combine([home, .. underHome]);
    }
}
