using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Public instances from a folder of zips, with the best known bounds from the tables beside them.</summary>
internal static class InstancesBenchmark
{
    private sealed record Known(long? Lower, long? Upper, bool IsImpossible);

    private static readonly (string Set, string Zip, string Table)[] Sets =
    [
        ("j30", "psplib-j30.zip", "psplib-best-known.csv"),
        ("j60", "psplib-j60.zip", "psplib-best-known.csv"),
        ("j120", "psplib-j120.zip", "psplib-best-known.csv"),
        ("max-j30", "rcpspmax-j30.zip", "rcpspmax-best-known.csv"),
        ("ubo20", "rcpspmax-ubo20.zip", "rcpspmax-best-known.csv"),
        ("ubo50", "rcpspmax-ubo50.zip", "rcpspmax-best-known.csv"),
        ("ubo100", "rcpspmax-ubo100.zip", "rcpspmax-best-known.csv"),
        ("jobshop", "jobshop.zip", "jobshop-best-known.csv"),
    ];

    public static int Run(string[] args)
    {
        if (args.Length == 0 || !Directory.Exists(args[0]))
        {
            Console.Error.WriteLine("benchmarks: instances FOLDER [--set NAME] [--take N] [--effort quick|usual|thorough]");
            return 2;
        }

        var only = Option(args, "--set");
        var take = int.Parse(Option(args, "--take") ?? "1000000", CultureInfo.InvariantCulture);
        var effort = Enum.Parse<Effort>(Option(args, "--effort") ?? "usual", ignoreCase: true);
        foreach (var (set, zip, table) in Sets)
        {
            if ((only is null || only == set) && File.Exists(Path.Combine(args[0], zip)))
                Set(set, Path.Combine(args[0], zip), Table(Path.Combine(args[0], table), set), take, effort);
        }

        return 0;
    }

    private static void Set(string set, string zip, Dictionary<string, Known> table, int take, Effort effort)
    {
        using var archive = ZipFile.OpenRead(zip);
        var entries = archive.Entries.Where(e => e.Length > 0 && table.ContainsKey(Key(set, e.Name))).OrderBy(e => e.Name, StringComparer.Ordinal).ToList();
        // every n-th, so that all parts of a set are there
        var every = Math.Max(1, (entries.Count + take - 1) / take);
        int solved = 0, proved = 0, impossible = 0, wrong = 0, count = 0;
        var gaps = new List<double>();
        var overPath = new List<double>();
        var toBest = new List<double>();
        for (var i = 0; i < entries.Count; i += every, count++)
        {
            using var reader = new StreamReader(entries[i].Open());
            var text = reader.ReadToEnd();
            var problem = set == "jobshop" ? InstanceFiles.JobShop(text) : entries[i].Name.EndsWith(".sm", StringComparison.Ordinal) ? InstanceFiles.Sm(text) : InstanceFiles.Sch(text);
            var known = table[Key(set, entries[i].Name)];
            var watch = Stopwatch.StartNew();
            double last = 0;
            switch (Solver.Solve(problem, effort, 1, new Now(() => last = watch.Elapsed.TotalSeconds)))
            {
                case Outcome.Planned plan:
                    solved++;
                    proved += plan.Bound.IsTight ? 1 : 0;
                    wrong += known.IsImpossible || plan.Score.Finish < known.Lower || plan.Bound.Finish > known.Upper ? 1 : 0;
                    toBest.Add(last);
                    if (known.Upper is { } upper)
                        gaps.Add(100.0 * (plan.Score.Finish - upper) / upper);
                    overPath.Add(100.0 * ((double)plan.Score.Finish / InstanceFiles.CriticalPath(problem) - 1));
                    break;
                case Outcome.Impossible { Obstacles: var obstacles }:
                    impossible += obstacles.Any(o => o is Obstacle.NotFound) ? 0 : 1;
                    wrong += !obstacles.Any(o => o is Obstacle.NotFound) && known.Upper is not null ? 1 : 0;
                    break;
            }
        }

        toBest.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{set,-8} {count,4} instances: solved {solved}, proved best {proved}, proved impossible {impossible}, contradicting the table {wrong}; from the best known {gaps.DefaultIfEmpty(0).Average():0.00} %, over the critical path {overPath.DefaultIfEmpty(0).Average():0.00} %, median time to best {toBest.DefaultIfEmpty(0).ElementAt(toBest.Count / 2):0.00} s"));
    }

    private static string Key(string set, string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        return set is "j30" or "j60" or "j120" ? file : name.StartsWith("psp", StringComparison.Ordinal) ? name[3..] : name;
    }

    private static Dictionary<string, Known> Table(string path, string set)
    {
        var rows = new Dictionary<string, Known>();
        foreach (var line in File.ReadLines(path).Skip(1))
        {
            var cells = line.Split(',');
            var isShop = set == "jobshop";
            if (!isShop && cells[0] != (set == "max-j30" ? "j30" : set))
                continue;
            rows[isShop ? cells[0] : cells[1]] = new Known(Number(cells[2]), Number(cells[3]), cells.Length > 4 && cells[4] == "unsat");
        }

        return rows;
    }

    private static long? Number(string text) => long.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string? Option(string[] args, string name)
    {
        var i = Array.IndexOf(args, name);
        return i >= 0 && i + 1 < args.Length ? args[i + 1] : null;
    }

    private sealed class Now(Action tell) : IProgress<SolveProgress>
    {
        public void Report(SolveProgress value) => tell();
    }
}
