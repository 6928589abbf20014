using System.Diagnostics;
using System.Globalization;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Painting batches of growing size: time to the first plan, gap to the bound in open minutes, time in all.</summary>
internal static class BatchesBenchmark
{
    public static int Run(string[] args)
    {
        var sizes = args.Where((a, i) => char.IsAsciiDigit(a[0]) && (i == 0 || args[i - 1] is not ("--batch" or "--seed"))).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
        var effort = args.Contains("--quick") ? Effort.Quick : args.Contains("--thorough") ? Effort.Thorough : Effort.Usual;
        var seed = Words.NumberAfter(args, "--seed") ?? 1;
        var hasBaseline = args.Contains("--baseline");
        var closesDown = !args.Contains("--no-close-downs");
        Console.WriteLine("lot-steps  batch  runs  first plan s  gap open min   gap %    sittings    changes  work        s" + (hasBaseline ? "    plain %  CPU s" : ""));
        foreach (var size in sizes.Count > 0 ? sizes : [50, 150, 500, 2000])
        {
            var gaps = new List<double>();
            var plain = new List<double?>();
            foreach (var batch in Words.NumberAfter(args, "--batch") is { } only ? [only] : Enumerable.Range(0, size >= 2000 ? 2 : 4))
                gaps.Add(One(closesDown ? PaintingBatch.Of(size, batch) : PaintingBatch.WithoutCloseDowns(PaintingBatch.Of(size, batch)), (size, batch), effort, seed, hasBaseline, plain));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{size,9}  average gap {100 * gaps.Average():0.00} %{Plain(plain)}"));
        }

        return 0;
    }

    private static string Plain(List<double?> gaps) => gaps.Count == 0 ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $", the plain model {gaps.Count(g => g is not null)} of {gaps.Count} plans{(gaps.Exists(g => g is not null) ? $", average gap {100 * gaps.Average():0.00} %" : "")}");

    private static double One(Problem problem, (int Size, int Batch) name, Effort effort, int seed, bool hasBaseline, List<double?> plain)
    {
        using var clock = new CpuClock();
        var watch = Stopwatch.StartNew();
        double? first = null;
        var outcome = Solver.Solve(problem, effort, seed, new Now(() => first ??= watch.Elapsed.TotalSeconds));
        if (outcome is not Outcome.Planned plan)
        {
            Console.WriteLine($"{name.Size,9}  {name.Batch,5}  no plan: {string.Join("; ", ((Outcome.Impossible)outcome).Obstacles)}");
            return 1;
        }

        var seconds = watch.Elapsed.TotalSeconds;
        Console.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"{problem.Activities.Length,9}  {name.Batch,5}  {plan.Schedule.Runs.Length,4}  {first,12:0.000}  {plan.Bound.GapOpenTicks,6} of {plan.Bound.OpenTicks,6}  {100 * plan.Bound.GapShare,6:0.00}  {plan.Bound.GapIntervals,8}  {plan.Score.Changes,9}  {plan.Work,9}  {seconds,6:0.0}"));
        Console.WriteLine(hasBaseline ? Baseline(problem, plan, clock.Seconds, plain) : "");
        Console.WriteLine(BatchAnatomy.Of(problem, plan));
        return plan.Bound.GapShare;
    }

    // The plain model's gap to the same bound, after about as much CPU time.
    private static string Baseline(Problem problem, Outcome.Planned plan, double cpuSeconds, List<double?> plain)
    {
        var (finish, took) = PlainModel.Solve(problem, cpuSeconds);
        plain.Add(finish is { } at ? 1 - ((plan.Bound.OpenTicks - plan.Bound.GapOpenTicks) / (double)OpenUntil(problem, at)) : null);
        return string.Create(CultureInfo.InvariantCulture, $"  {(plain[^1] is { } gap ? $"{100 * gap,8:0.00}" : " no plan")}  {cpuSeconds,5:0.0} and {took:0.0}");
    }

    private static long OpenUntil(Problem problem, long time) => problem.Workers[0].Open.Open.Sum(o => Math.Max(0, Math.Min(o.End, time) - o.Start));
}
