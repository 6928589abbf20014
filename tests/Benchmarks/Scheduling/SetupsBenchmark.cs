using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using Google.OrTools.Sat;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>
/// One machine, set-ups that depend on the order, weighted tardiness: instances without a table of best known values,
/// so set beside a plain constraint model at about the same CPU time.
/// </summary>
internal static class SetupsBenchmark
{
    private sealed record Instance(string Group, long[] Process, long[] Weight, long[] Due, long[] First, long[][] SetUp)
    {
        /// <summary>Any order is done by then.</summary>
        public long Horizon => Process.Sum() + First.Max() + SetUp.Sum(row => row.Max());
    }

    public static void Run(string zip, int take, Effort effort)
    {
        using var archive = ZipFile.OpenRead(zip);
        var entries = archive.Entries.Where(e => e.Name.EndsWith(".instance", StringComparison.Ordinal)).OrderBy(e => e.Name, StringComparer.Ordinal).ToList();
        var every = Math.Max(1, (entries.Count + take - 1) / take);
        var rows = new List<(string Group, double Ours, double Plain, double Cpu)>();
        for (var i = 0; i < entries.Count; i += every)
        {
            using var reader = new StreamReader(entries[i].Open());
            var instance = Read(reader.ReadToEnd());
            using var clock = new CpuClock();
            var outcome = (Outcome.Planned)Solver.Solve(Pose(instance), effort);
            var cpu = clock.Seconds;
            rows.Add((instance.Group, outcome.Score.Lateness, Plain(instance, cpu), cpu));
        }

        Console.WriteLine("tightness, range, set-ups   instances  weighted tardiness  plain model  CPU s each");
        foreach (var group in rows.GroupBy(r => r.Group).OrderBy(g => g.Key, StringComparer.Ordinal))
            Console.WriteLine(Row(group.Key, [.. group]));
        Console.WriteLine(Row("all", rows));
    }

    private static string Row(string name, List<(string Group, double Ours, double Plain, double Cpu)> rows) => string.Create(
        CultureInfo.InvariantCulture,
        $"{name,-26}  {rows.Count,9}  {rows.Sum(r => r.Ours),18:0}  {(rows.Exists(r => double.IsNaN(r.Plain)) ? $"{rows.Count(r => double.IsNaN(r.Plain))} no plan" : $"{rows.Sum(r => r.Plain):0}"),11}  {rows.Average(r => r.Cpu),10:0.0}");

    private static Problem Pose(Instance instance)
    {
        var jobs = instance.Process.Length;
        return new Problem
        {
            Workers = [new Worker("machine", new Pipeline.Scheduling.Calendar([new Interval(0, instance.Horizon)]))],
            Tools = [new Tool(
                "machine",
                1,
                [.. Enumerable.Range(0, jobs).Select(j => $"job {j}")],
                [.. instance.SetUp.Select(row => row.ToImmutableArray())],
                [.. instance.First],
                [.. Enumerable.Repeat(0L, jobs)])],
            Activities = [.. instance.Process.Select((ticks, j) => new Activity { Name = $"job {j}", PerUnit = ticks, Tool = new ToolUse(0, j) })],
            Dues = [.. instance.Due.Select((due, j) => new Due(j, due, instance.Weight[j]))],
            Aims = [Aim.FinishSoon],
        };
    }

    private static double Plain(Instance instance, double cpuSeconds)
    {
        var model = new CpModel();
        var jobs = instance.Process.Length;
        var horizon = instance.Horizon;
        var starts = instance.Process.Select((_, j) => model.NewIntVar(0, horizon, $"s{j}")).ToArray();
        var late = instance.Process.Select((_, j) => model.NewIntVar(0, horizon, $"t{j}")).ToArray();
        var trip = model.AddCircuit();
        for (var j = 0; j < jobs; j++)
        {
            model.Add(late[j] >= starts[j] + (instance.Process[j] - instance.Due[j]));
            var first = model.NewBoolVar($"f{j}");
            trip.AddArc(0, j + 1, first);
            trip.AddArc(j + 1, 0, model.NewBoolVar($"l{j}"));
            model.Add(starts[j] >= instance.First[j]).OnlyEnforceIf(first);
            for (var i = 0; i < jobs; i++)
            {
                if (i == j)
                    continue;
                var next = model.NewBoolVar($"n{i}_{j}");
                trip.AddArc(i + 1, j + 1, next);
                model.Add(starts[j] >= starts[i] + (instance.Process[i] + instance.SetUp[i][j])).OnlyEnforceIf(next);
            }
        }

        model.AddNoOverlap(starts.Select((s, j) => model.NewFixedSizeIntervalVar(s, instance.Process[j], $"i{j}")));
        model.Minimize(LinearExpr.WeightedSum(late, instance.Weight));
        using var clock = new CpuClock(cpuSeconds);
        using var solver = new CpSolver { StringParameters = "num_workers:2" };
        using var registration = clock.Over.Register(solver.StopSearch);
        return solver.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? solver.ObjectiveValue : double.NaN;
    }

    private static Instance Read(string text)
    {
        var lines = text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        string Figure(string name) => lines.First(l => l.StartsWith(name + ":", StringComparison.Ordinal))[(name.Length + 1)..].Trim();
        var jobs = int.Parse(Figure("Problem Size"), CultureInfo.InvariantCulture);
        long[] Numbers(string name) => [.. lines.Skip(Array.IndexOf(lines, name) + 1).Take(jobs).Select(l => long.Parse(l, CultureInfo.InvariantCulture))];
        var first = new long[jobs];
        var setUp = Enumerable.Range(0, jobs).Select(_ => new long[jobs]).ToArray();
        foreach (var cells in lines.Skip(Array.IndexOf(lines, "Setup Times:") + 1).Select(l => l.Split('\t', ' ')).TakeWhile(c => c.Length == 3 && int.TryParse(c[0], out _)))
        {
            var (from, to, ticks) = (int.Parse(cells[0], CultureInfo.InvariantCulture), int.Parse(cells[1], CultureInfo.InvariantCulture), long.Parse(cells[2], CultureInfo.InvariantCulture));
            (from < 0 ? first : setUp[from])[to] = from == to ? 0 : ticks;
        }

        return new Instance($"{Figure("Tau")}, {Figure("R")}, {Figure("Eta")}", Numbers("Process Times:"), Numbers("Weights:"), Numbers("Duedates:"), first, setUp);
    }
}
