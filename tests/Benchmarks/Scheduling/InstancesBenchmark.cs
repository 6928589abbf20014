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

    /// <summary>
    /// Published averages over whole sets. J30 to J120: Kolisch and Hartmann, European Journal of Operational Research 174 (2006) 23-37, and
    /// Debels and Vanhoucke, Operations Research 55 (2007) 457-469; deviation after 1,000 / 5,000 / 50,000 schedules, at J30 from the
    /// optimum, at J60 and J120 over the critical path. Best known: PSPLIB; CP-SAT: the experiments published with PyJobShop.
    /// </summary>
    private static readonly Dictionary<string, string> Published = new()
    {
        ["j30"] = "from the optimum: sampling 0.83/0.53/0.27, genetic with forward-backward improvement 0.25/0.06/0.03, by decomposition 0.12/0.04/0.02 %",
        ["j60"] = "over the critical path: sampling 13.96/13.53/12.97, genetic with forward-backward improvement 11.89/11.19/10.84, by decomposition 11.31/10.95/10.68, CP-SAT in 900 s on 8 cores 10.59, best known 10.37 %",
        ["j120"] = "over the critical path: sampling 42.84/41.84/40.63, genetic with forward-backward improvement 36.53/33.91/31.49, by decomposition 33.55/32.18/30.69, CP-SAT in 900 s on 8 cores 31.44, best known 28.91 %",
    };

    public static int Run(string[] args)
    {
        if (args.Length == 0 || !Directory.Exists(args[0]))
        {
            Console.Error.WriteLine("benchmarks: instances FOLDER [--set NAME] [--named BEGINNING[,BEGINNING…]] [--take N] [--effort quick|usual|thorough]");
            return 2;
        }

        var only = Words.After(args, "--set");
        var take = int.Parse(Words.After(args, "--take") ?? "1000000", CultureInfo.InvariantCulture);
        var named = Words.After(args, "--named")?.Split(',');
        var effort = Enum.Parse<Effort>(Words.After(args, "--effort") ?? "usual", ignoreCase: true);
        foreach (var (set, zip, table) in Sets)
        {
            if ((only is null || only == set) && File.Exists(Path.Combine(args[0], zip)))
                Set(set, Path.Combine(args[0], zip), Table(Path.Combine(args[0], table), set), named, take, effort);
        }

        if (only == "setups" && Path.Combine(args[0], "setups-single-machine.zip") is var setups && File.Exists(setups))
            SetupsBenchmark.Run(setups, take, effort);

        return 0;
    }

    private static void Set(string set, string zip, Dictionary<string, Known> table, string[]? named, int take, Effort effort)
    {
        using var archive = ZipFile.OpenRead(zip);
        var entries = archive.Entries.Where(e => e.Length > 0 && table.ContainsKey(Key(set, e.Name)) && named?.Any(e.Name.StartsWith) != false).OrderBy(e => e.Name, StringComparer.Ordinal).ToList();
        if (entries.Count == 0)
            return;
        // every n-th, so that all parts of a set are there
        var every = Math.Max(1, (entries.Count + take - 1) / take);
        int solved = 0, proved = 0, impossible = 0, wrong = 0, count = 0;
        var gaps = new List<double>();
        var overPath = new List<double>();
        var toBest = new List<double>();
        var cpu = new List<double>();
        var open = new List<string>();
        var longer = new List<string>();
        for (var i = 0; i < entries.Count; i += every, count++)
        {
            using var reader = new StreamReader(entries[i].Open());
            var text = reader.ReadToEnd();
            var problem = set == "jobshop" ? InstanceFiles.JobShop(text) : entries[i].Name.EndsWith(".sm", StringComparison.Ordinal) ? InstanceFiles.Sm(text) : InstanceFiles.Sch(text);
            var known = table[Key(set, entries[i].Name)];
            var watch = Stopwatch.StartNew();
            var before = Process.GetCurrentProcess().TotalProcessorTime;
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
                    if (plan.Score.Finish > known.Upper)
                        longer.Add($"{Key(set, entries[i].Name)} {plan.Score.Finish} for {known.Upper}");
                    overPath.Add(100.0 * ((double)plan.Score.Finish / InstanceFiles.CriticalPath(problem) - 1));
                    break;
                case Outcome.Impossible { Obstacles: var obstacles } when !obstacles.Any(o => o is Obstacle.NotFound):
                    impossible++;
                    wrong += known.Upper is not null ? 1 : 0;
                    break;
                default:
                    open.Add($"{Key(set, entries[i].Name)} ({(known.IsImpossible ? "impossible" : known.Upper is { } some ? $"best known {some}" : "nothing known")})");
                    break;
            }

            cpu.Add((Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds);
        }

        toBest.Sort();
        cpu.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{set,-8} {count,4} instances: solved {solved}, proved best {proved}, proved impossible {impossible}, contradicting the table {wrong}; from the best known {gaps.DefaultIfEmpty(0).Average():0.00} %, over the critical path {overPath.DefaultIfEmpty(0).Average():0.00} %, median time to best {toBest.DefaultIfEmpty(0).ElementAt(toBest.Count / 2):0.00} s, CPU per instance: median {cpu[cpu.Count / 2]:0.0} s, mean {cpu.Average():0.0} s"));
        if (open.Count > 0)
            Console.WriteLine($"         neither a plan nor a proof for: {string.Join(", ", open)}");
        Console.WriteLine($"         longer than the best known: {longer.Count}{(longer.Count > 0 ? ": " + string.Join(", ", longer) : "")}");
        if (Published.TryGetValue(set, out var published))
            Console.WriteLine($"         published for the whole set, {published}");
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
}
