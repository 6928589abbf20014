using System.Diagnostics;

namespace Pipeline.Benchmarks.Command;

/// <summary>The repository and what is built from it.</summary>
internal static class Repository
{
    /// <summary>The folder that holds Pipeline.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Where the command lies once <see cref="BuildCommand"/> has run.</summary>
    public static string CommandFolder { get; } = Path.Combine(Root, "artifacts", "bin", "Pipeline.Cli", "release");

    /// <summary>Builds the command as it is released.</summary>
    public static void BuildCommand() => Build(Path.Combine(Root, "src", "Pipeline.Cli"));

    /// <summary>Publishes the command, as it is installed, and returns its path.</summary>
    public static string PublishCommand()
    {
        var folder = Directory.CreateTempSubdirectory("published").FullName;
        Dotnet("publish", Path.Combine(Root, "src", "Pipeline.Cli"), "-o", folder);
        return Path.Combine(folder, "pipeline");
    }

    /// <summary>Builds a project in its release form.</summary>
    public static void Build(string project) => Dotnet("build", project);

    private static void Dotnet(string what, params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [what, .. words, "-c", "Release", "-v", "q", "--nologo"]))!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"dotnet {what} {words[0]} failed.");
    }

    /// <summary>The middle one of several times.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Pipeline.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Pipeline.sln above {AppContext.BaseDirectory}.");
    }
}
