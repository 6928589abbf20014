using System.Diagnostics;
using System.Text;

namespace Pipeline.Tests.EndToEnd;

/// <summary>What the command left behind.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Out">Standard output.</param>
/// <param name="Err">Standard error.</param>
public sealed record Ran(int ExitCode, string Out, string Err)
{
    /// <summary>Neither stream shows the program's inside.</summary>
    public Ran ShowsNoTrace()
    {
        (Out + Err).Should().NotContain("   at ").And.NotContain("Unhandled exception").And.NotContain("internal error");
        return this;
    }
}

/// <summary>A folder of its own with a home of its own, in which the real command is run.</summary>
public sealed class Bench : IDisposable
{
    /// <summary>Far longer than anything takes; a command that hangs is ended and fails the test.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>The repository.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The folder with the command, its contract and its plugins.</summary>
    public static string CommandFolder { get; } =
        Path.Combine(Root, "artifacts", "bin", "Pipeline.Cli", Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)));

    /// <summary>The contract as the command has it.</summary>
    public static string Contract => Path.Combine(CommandFolder, "Pipeline.Abstractions.dll");

    /// <summary>The folder the command stands in.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("bench").FullName;

    private string Home { get; } = Directory.CreateTempSubdirectory("home").FullName;

    /// <summary>The state folder of this bench's home.</summary>
    public string StateFolder => Path.Combine(Home, "state", "pipeline");

    /// <summary>The painter's own plugins.</summary>
    public string OwnPlugins => Directory.CreateDirectory(Path.Combine(Home, "data", "pipeline", "plugins")).FullName;

    /// <summary>A file of the repository.</summary>
    public static string Workflow(string name) => Path.Combine(Root, "workflows", name);

    /// <summary>Lays a file into the folder.</summary>
    public string File(string name, string text) => File(name, Encoding.UTF8.GetBytes(text));

    /// <summary>Lays a file into the folder.</summary>
    public string File(string name, byte[] bytes)
    {
        var path = Path.Combine(Folder, name);
        System.IO.File.WriteAllBytes(path, bytes);
        return path;
    }

    /// <summary>Runs the command to its end.</summary>
    public Ran Pipeline(params string[] words) => PipelineReading("", words);

    /// <summary>Runs the command to its end with something on its standard input.</summary>
    public Ran PipelineReading(string input, params string[] words)
    {
        using var process = Start(words);
        var outcome = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        try
        {
            process.StandardInput.Write(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // it ended without reading
        }

        if (!process.WaitForExit(Patience))
        {
            process.Kill();
            throw new TimeoutException($"pipeline {string.Join(' ', words)} hangs.");
        }

        return new Ran(process.ExitCode, outcome.Result, error.Result);
    }

    /// <summary>Runs a line of shell in the folder, with <c>$pipeline</c> for the command.</summary>
    public Ran Shell(string line)
    {
        using var process = Started("/bin/bash", ["-c", line]);
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var outcome = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Ran(process.ExitCode, outcome, error.Result);
    }

    /// <summary>Starts the command and leaves it running.</summary>
    public Process Start(params string[] words) => Started(Path.Combine(CommandFolder, "pipeline"), words);

    public void Dispose()
    {
        Directory.Delete(Folder, recursive: true);
        Directory.Delete(Home, recursive: true);
    }

    private Process Started(string program, string[] words)
    {
        var start = new ProcessStartInfo(program, words)
        {
            WorkingDirectory = Folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
            StandardInputEncoding = new UTF8Encoding(false),
        };
        start.Environment["HOME"] = Home;
        start.Environment["XDG_DATA_HOME"] = Path.Combine(Home, "data");
        start.Environment["XDG_STATE_HOME"] = Path.Combine(Home, "state");
        start.Environment["pipeline"] = Path.Combine(CommandFolder, "pipeline");
        start.Environment.Remove("NO_COLOR");
        return Process.Start(start)!;
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "Pipeline.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Pipeline.sln above {AppContext.BaseDirectory}.");
    }
}
