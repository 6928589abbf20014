using System.Diagnostics;
using NodaTime;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Workflows;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Pipeline.Benchmarks.Command;

/// <summary>
/// Checks a file of 20,000 steps against what the YAML reader alone takes, in processor time, and plans it: time to the first plan by the
/// clock and the most memory.
/// </summary>
internal static class LargeFileBenchmark
{
    private const int Steps = 20_000;
    private const double MostTimes = 3;
    private const double MostTimesFewRules = 2;
    private const double MostSecondsToPlan = 20;
    private const double MostMebibytes = 1024;
    private const int Runs = 9;

    // by then the runtime has compiled what is run often for good
    private const int RunsToWarmUp = 12;

    // masks, gloss, hot over soft, order and dryness: what checking began with
    private static readonly string[] FewRules =
    [
        "mask-left-on", "unmask-without-mask", "mask-order", "paint-over-mask", "mask-on-too-long", "mask-too-soon", "unmasking-moment",
        "no-gloss-under-decal", "wash-on-matt", "hot-over-soft", "wet-hot-coat", "effect-without-barrier", "effect-too-soon",
        "paint-on-unwashed", "no-undercoat", "recoat-too-soon", "handled-too-soon", "decal-still-soft", "fat-over-lean", "damp-piece",
    ];

    public static int Run(string[] words)
    {
        Repository.BuildCommand();
        var (trade, faults) = PluginLoading.Load([Path.Combine(Repository.CommandFolder, "plugins")]);
        if (!faults.IsEmpty)
            throw new InvalidOperationException(faults[0].Message);
        var text = LargeBatch.Text(Steps);
        var source = new SourceText("harbour.yaml", text);
        Checked Check() => Stages.Check([source], trade);
        var found = Check();
        Console.WriteLine(FormattableString.Invariant(
            $"{found.Walked?.Batch.Routes.Sum(route => route.Steps.Count) ?? 0} steps, {text.Length / 1024.0:0} KiB, {found.Findings.Count} findings"));
        foreach (var finding in found.Findings.Take(3))
            Console.WriteLine($"  {finding.Place}: {finding.Message} [{finding.Rule}]");

        var few = trade with { Rules = [.. trade.Rules.Where(rule => FewRules.Contains(rule.Item.Name))] };
        var (events, tree, check) = Times(text, Check);
        Print("YAML events alone", events, check);
        Print("YAML tree alone", tree, check);
        Console.WriteLine(FormattableString.Invariant($"{"check",-20} {check,8:0.0} ms"));
        PrintStages(source, trade);
        var withFew = Repository.Median(Enumerable.Range(0, Runs).Select(_ => Milliseconds(() => Stages.Check([source], few))));
        Print(FormattableString.Invariant($"with {few.Rules.Count} rules only"), withFew, check);
        Console.WriteLine(FormattableString.Invariant($"all rules at most {MostTimesFewRules:0} times those: {(check <= MostTimesFewRules * withFew ? "yes" : "NO")}"));
        var isFast = check <= MostTimes * tree;
        Console.WriteLine(FormattableString.Invariant($"check at most {MostTimes:0} times the YAML tree: {(isFast ? "yes" : "NO")}"));
        isFast &= check <= MostTimesFewRules * withFew;
        return words.Contains("--check-only") ? Code(isFast) : Code(Plan(found, trade) && isFast);
    }

    /// <summary>Where the time goes.</summary>
    private static void PrintStages(SourceText source, Trade trade)
    {
        var (read, bind, walk) = (new List<double>(), new List<double>(), new List<double>());
        for (var run = 0; run < Runs; run++)
        {
            SyntaxTree? tree = null;
            Batch? batch = null;
            read.Add(Milliseconds(() => tree = Reader.Read(source).Tree));
            bind.Add(Milliseconds(() => batch = Binder.Bind([tree!], trade).Batch));
            walk.Add(Milliseconds(() => Walk.Run(batch!, trade)));
        }

        Console.WriteLine(FormattableString.Invariant(
            $"  of which read {Repository.Median(read):0} ms, bind {Repository.Median(bind):0} ms, walk {Repository.Median(walk):0} ms with {trade.Rules.Count} rules"));
    }

    private static (double Events, double Tree, double Check) Times(string text, Func<Checked> check)
    {
        var (events, tree, whole) = (new List<double>(), new List<double>(), new List<double>());
        for (var run = 0; run < RunsToWarmUp + Runs; run++)
        {
            events.Add(Milliseconds(() =>
            {
                var parser = new Parser(new StringReader(text));
                while (parser.MoveNext())
                {
                    // to the end
                }
            }));
            tree.Add(Milliseconds(() => new YamlStream().Load(new StringReader(text))));
            whole.Add(Milliseconds(() => check()));
        }

        return (Repository.Median(events.Skip(RunsToWarmUp)), Repository.Median(tree.Skip(RunsToWarmUp)), Repository.Median(whole.Skip(RunsToWarmUp)));
    }

    private static bool Plan(Checked found, Trade trade)
    {
        if (found.Sound is not { } walked)
        {
            Console.WriteLine("The file has errors; nothing is planned.");
            return false;
        }

        var from = walked.Batch.Bench.Zone.AtLeniently(new LocalDateTime(2026, 11, 30, 8, 0)).ToInstant();
        var first = new FirstPlan(Stopwatch.GetTimestamp());
        var outcome = Stages.Plan(walked, trade, new PlanRequest(from, SearchEffort.Quick, Progress: first), CancellationToken.None);
        var seconds = Stopwatch.GetElapsedTime(first.Began).TotalSeconds;
        var toFirst = first.Seconds ?? seconds;
        var mebibytes = Process.GetCurrentProcess().PeakWorkingSet64 / 1024.0 / 1024.0;
        Console.WriteLine(FormattableString.Invariant($"first plan after {toFirst:0.0} s, quick effort done after {seconds:0.0} s, {mebibytes:0} MiB at most: {outcome.GetType().Name}"));
        var isGood = outcome is PlanOutcome.Planned && toFirst <= MostSecondsToPlan && mebibytes <= MostMebibytes;
        Console.WriteLine(FormattableString.Invariant($"a first plan within {MostSecondsToPlan:0} s and {MostMebibytes:0} MiB: {(isGood ? "yes" : "NO")}"));
        return isGood;
    }

    private static void Print(string name, double milliseconds, double check) =>
        Console.WriteLine(FormattableString.Invariant($"{name,-20} {milliseconds,8:0.0} ms, check is {check / milliseconds:0.00} times"));

    // processor time of the whole process: other work on the machine does not count, threads of the runtime do
    private static double Milliseconds(Action action)
    {
        GC.Collect();
        var before = Environment.CpuUsage.TotalTime;
        action();
        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
    }

    private static int Code(bool isGood) => isGood ? 0 : 1;

    /// <summary>Notes when the first plan was told of.</summary>
    private sealed class FirstPlan(long began) : IProgress<PlanProgress>
    {
        public long Began => began;

        public double? Seconds { get; private set; }

        public void Report(PlanProgress value) => Seconds ??= Stopwatch.GetElapsedTime(began).TotalSeconds;
    }
}
