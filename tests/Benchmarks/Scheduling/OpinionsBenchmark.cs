using System.Globalization;
using Pipeline.Scheduling;
using Pipeline.Tests.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Second opinions on more small random problems than the tests have time for.</summary>
internal static class OpinionsBenchmark
{
    public static int Run(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 500;
        var effort = args.Contains("--quick") ? Effort.Quick : Effort.Usual;
        var disagreed = 0;
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            foreach (var (kind, problem) in new[] { ("week", SecondOpinions.Week(seed)), ("lots", SecondOpinions.Lots(seed)), ("racks", SecondOpinions.Racks(seed)), ("shared", SecondOpinions.Shared(seed)) })
            {
                if (SecondOpinions.Disagreement(problem, effort) is not { } what)
                    continue;
                Interlocked.Increment(ref disagreed);
                Console.WriteLine($"{kind} {seed}: {what}");
            }
        });
        Console.WriteLine($"{4 * count} problems, {disagreed} of another opinion");
        return disagreed > 0 ? 1 : 0;
    }
}
