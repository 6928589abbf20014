using System.Diagnostics;

namespace Pipeline.Benchmarks.Command;

/// <summary>
/// How long <c>pipeline --help</c> and <c>--version</c> of the published command take against an empty .NET program: the median of many runs, taken in turns
/// so that whatever else the machine does falls on all alike.
/// </summary>
internal static class StartupBenchmark
{
    private const double MostTimes = 2.5;
    private const int Runs = 41;

    private const string EmptyProject =
        """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
          </PropertyGroup>
        </Project>
        """;

    public static int Run()
    {
        var empty = BuildEmpty();
        var command = Repository.PublishCommand();
        (string Name, string Program, string[] Words)[] tried =
            [("empty program", empty, []), ("pipeline --help", command, ["--help"]), ("pipeline --version", command, ["--version"])];
        var times = tried.ToDictionary(each => each.Name, _ => new List<double>());
        for (var run = 0; run < Runs + 3; run++)
        {
            foreach (var (name, program, words) in tried)
            {
                var milliseconds = Milliseconds(program, words);

                // the first runs bring the files into memory
                if (run >= 3)
                    times[name].Add(milliseconds);
            }
        }

        var ground = Repository.Median(times["empty program"]);
        foreach (var (name, each) in times)
            Console.WriteLine(FormattableString.Invariant($"{name,-20} {Repository.Median(each),7:0.0} ms  {Repository.Median(each) / ground:0.00} times"));
        var isFast = Repository.Median(times["pipeline --help"]) <= MostTimes * ground;
        Console.WriteLine(FormattableString.Invariant($"at most {MostTimes:0.0} times: {(isFast ? "yes" : "NO")}"));
        return isFast ? 0 : 1;
    }

    private static string BuildEmpty()
    {
        var folder = Directory.CreateTempSubdirectory("empty").FullName;
        File.WriteAllText(Path.Combine(folder, "Empty.csproj"), EmptyProject);
        File.WriteAllText(Path.Combine(folder, "Program.cs"), "return 0;");
        Repository.Build(folder);
        return Path.Combine(folder, "bin", "Release", "net10.0", "Empty");
    }

    private static double Milliseconds(string program, string[] words)
    {
        var start = new ProcessStartInfo(program, words) { RedirectStandardOutput = true };
        var began = Stopwatch.GetTimestamp();
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
        return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
    }
}
