using System.Globalization;
using Pipeline.Scheduling;
using Pipeline.Tests.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Many random problems through solver and auditor.</summary>
internal static class StormBenchmark
{
    public static int Run(string[] args)
    {
        var count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 10_000;
        int planned = 0, faults = 0, overBound = 0;
        Parallel.For(0, count, seed =>
        {
            var problem = RandomProblems.Next(seed);
            if (Solver.Solve(problem, Effort.Quick, seed, progress: null, keep: null, threads: 1) is not Outcome.Planned plan)
                return;
            Interlocked.Increment(ref planned);
            if (Auditor.Audit(problem, plan.Schedule).Count > 0 && Interlocked.Increment(ref faults) > 0)
                Console.WriteLine($"seed {seed}: the auditor rejects the schedule");
            if (plan.Bound.Finish > plan.Score.Finish && Interlocked.Increment(ref overBound) > 0)
                Console.WriteLine($"seed {seed}: the bound is beaten");
        });
        Console.WriteLine($"{count} problems: {planned} planned, {faults} rejected by the auditor, {overBound} below the bound");
        return faults + overBound > 0 ? 1 : 0;
    }
}
