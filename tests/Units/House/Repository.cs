using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Pipeline.Tests.Units.House;

/// <summary>The files of this repository as they lie on the disk.</summary>
internal static class Repository
{
    /// <summary>The rooms, from the first of the line to the last.</summary>
    public static readonly string[] Rooms =
        ["Abstractions", "Workflows", "Surfaces", "Scheduling", "Planning", "Reports", "Engine", "Cli"];

    /// <summary>The rooms that touch neither clock nor disk nor console.</summary>
    public static readonly string[] PureRooms = ["Abstractions", "Workflows", "Surfaces", "Scheduling", "Planning", "Reports"];

    /// <summary>The folder that holds Pipeline.sln.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>A room's project.</summary>
    public static Project Room(string room) => Project.Load(Path.Combine("src", $"Pipeline.{room}", $"Pipeline.{room}.csproj"));

    /// <summary>All plugins of the house.</summary>
    public static IEnumerable<Project> Plugins() =>
        Directory.GetFiles(Path.Combine(Root, "plugins"), "*.csproj", SearchOption.AllDirectories)
            .Select(file => Project.Load(Path.GetRelativePath(Root, file)));

    /// <summary>All files somebody wrote: not what is built, not what a tool keeps, paths from the root with forward slashes.</summary>
    public static IEnumerable<string> Files(params string[] endings) =>
        Under(new DirectoryInfo(Root))
            .Where(path => endings.Length == 0 || endings.Any(ending => path.EndsWith(ending, StringComparison.Ordinal)));

    /// <summary>The lines of a file.</summary>
    public static string[] Lines(string file) => File.ReadAllLines(Path.Combine(Root, file));

    private static IEnumerable<string> Under(DirectoryInfo folder)
    {
        foreach (var file in folder.EnumerateFiles())
            yield return Path.GetRelativePath(Root, file.FullName).Replace('\\', '/');
        foreach (var inner in folder.EnumerateDirectories().Where(each => each.Name is not ("artifacts" or "bin" or "obj" or ".git" or ".vs" or ".idea")))
        {
            foreach (var file in Under(inner))
                yield return file;
        }
    }

    private static string FindRoot([CallerFilePath] string thisFile = "")
    {
        // the path in the program is mapped for reproducible builds, so look upwards from where the tests run
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Pipeline.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Pipeline.sln above {AppContext.BaseDirectory} ({thisFile}).");
    }
}

/// <summary>What a project file says.</summary>
internal sealed record Project(string Name, string File, IReadOnlyList<string> References, IReadOnlyList<string> Packages)
{
    public static Project Load(string file)
    {
        var xml = XDocument.Load(Path.Combine(Repository.Root, file));
        IReadOnlyList<string> Included(string element) =>
            [.. xml.Descendants(element).Select(item => (string?)item.Attribute("Include") ?? "").Select(name => name.Replace('\\', '/'))];
        return new Project(
            Path.GetFileNameWithoutExtension(file),
            file,
            [.. Included("ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path))],
            Included("PackageReference"));
    }
}
