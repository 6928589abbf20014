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

    /// <summary>Builds a project in its release form.</summary>
    public static void Build(string project)
    {
        using var build = Process.Start(new ProcessStartInfo("dotnet", ["build", project, "-c", "Release", "-v", "q", "--nologo"]))!;
        build.WaitForExit();
        if (build.ExitCode != 0)
            throw new InvalidOperationException($"{project} does not build.");
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
