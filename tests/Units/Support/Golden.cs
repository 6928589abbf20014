namespace Pipeline.Tests.Units;

/// <summary>A file of the repository that a test keeps fresh. <c>PIPELINE_ACCEPT=1</c> rewrites it.</summary>
internal sealed class Golden
{
    private readonly string path;
    private readonly string name;

    private Golden(string name)
    {
        this.name = name;
        path = Path.Combine(Repository, name);
    }

    /// <summary>The repository's top folder.</summary>
    public static string Repository { get; } = FindTop();

    private static bool IsAccepting => Environment.GetEnvironmentVariable("PIPELINE_ACCEPT") == "1";

    /// <summary>The file of that path below the repository's top.</summary>
    public static Golden Of(string name) => new(name);

    /// <summary>Fails if the file says anything else, or writes it when accepting.</summary>
    public void ShouldBe(string text)
    {
        if (IsAccepting)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }

        File.Exists(path).Should().BeTrue($"{name} is generated: run the tests with PIPELINE_ACCEPT=1");
        File.ReadAllText(path).Should().Be(text, $"{name} is generated: run the tests with PIPELINE_ACCEPT=1 and read the diff");
    }

    private static string FindTop()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Pipeline.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Pipeline.sln above {AppContext.BaseDirectory}.");
    }
}
