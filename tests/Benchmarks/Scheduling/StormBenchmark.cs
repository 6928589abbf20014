using System.Diagnostics;
using System.Globalization;
using Pipeline.Scheduling;
using Pipeline.Tests.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Many random problems through solver and auditor, with little work for each.</summary>
internal static class StormBenchmark
{
    // Placements a problem: a few dispatches, some walking; what is asked here is whether plans are right, not how good they are.
    private const long MostWork = 10_000;

    public static int Run(string[] args)
    {
        var count = args.Length > 0 && int.TryParse(args[0], out var given) ? given : 10_000;
        var from = Words.NumberAfter(args, "--from") ?? 0;
        int planned = 0, impossible = 0, rejected = 0, done = 0;
        var process = Process.GetCurrentProcess();
        Parallel.For(from, from + count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            var fault = Fault(seed, out var isPlanned);
            Interlocked.Increment(ref isPlanned ? ref planned : ref impossible);
            if (fault is not null)
            {
                Interlocked.Increment(ref rejected);
                Console.WriteLine($"seed {seed}: {fault}");
            }

            if (Interlocked.Increment(ref done) % 5_000 == 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done} of {count}, {process.TotalProcessorTime.TotalMinutes:0.0} CPU minutes"));
        });
        Console.WriteLine($"planned {planned}, impossible {impossible}, rejected {rejected}");
        return rejected > 0 ? 1 : 0;
    }

    private static string? Fault(int seed, out bool isPlanned)
    {
        isPlanned = false;
        var problem = RandomProblems.Next(seed);
        try
        {
            var outcome = new Search(problem, Effort.Quick, seed, progress: null, keep: null, threads: 1) { MostWork = MostWork }.Run(CancellationToken.None);
            if ((outcome as Outcome.Planned ?? (outcome as Outcome.Impossible)?.Closest) is not { } plan)
                return null;
            isPlanned = outcome is Outcome.Planned;
            if (Auditor.Audit(problem, plan.Schedule) is [var fault, ..])
                return $"the auditor rejects the schedule: {fault.Kind}: {fault.Text}";
            if (plan.Refused > 0)
                return $"the auditor refuses {plan.Refused} schedules on the way";
            return plan.Bound.Finish > plan.Score.Finish || BoundFromAfar.Of(problem, plan.Score.Finish) > plan.Score.Finish ? "the bound is beaten" : null;
        }
        catch (InvalidOperationException wrong)
        {
            return wrong.Message;
        }
    }
}
