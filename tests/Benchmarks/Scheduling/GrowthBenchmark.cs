using System.Globalization;
using System.Text;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>How the time to the first plan and the memory grow with the batch, counted in units times steps.</summary>
internal static class GrowthBenchmark
{
    private sealed record Row(int Size, int LotSteps, int UnitSteps, double Seconds, double MiB)
    {
        public double PerNLogN => Seconds / (UnitSteps * Math.Log2(UnitSteps));
    }

    public static int Run(string[] args)
    {
        var sizes = args.Where(a => int.TryParse(a, out _)).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
        var rack = Words.NumberAfter(args, "--rack");
        sizes.Remove(rack ?? -1);
        var rows = new List<Row>();
        Measure(200, rack); // so that the first row is not the compiler's
        Console.WriteLine("lot-steps  unit-steps  first plan s  peak managed MiB  time / (n log n), first row = 1");
        foreach (var size in sizes.Count > 0 ? sizes : [500, 1000, 2000, 5000, 10_000, 20_000])
        {
            rows.Add(Measure(size, rack));
            var row = rows[^1];
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.LotSteps,9}  {row.UnitSteps,10}  {row.Seconds,12:0.000}  {row.MiB,16:0}  {row.PerNLogN / rows[0].PerNLogN,8:0.00}"));
        }

        if (args.FirstOrDefault(a => a.EndsWith(".svg", StringComparison.Ordinal)) is { } path)
        {
            File.WriteAllText(path, Plot(rows));
            Console.WriteLine($"plotted to {path}");
        }

        return 0;
    }

    private static Row Measure(int lotSteps, int? rack)
    {
        var problem = PaintingBatch.Of(lotSteps, 1);
        if (rack is { } places)
            problem = PaintingBatch.WithRack(problem, places);
        GC.Collect();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        long peak = 0;
        using var sampling = new Timer(_ => peak = Math.Max(peak, GC.GetTotalMemory(forceFullCollection: false) - before), null, 0, 10);
        using var enough = new CancellationTokenSource();
        using var clock = new CpuClock();
        double? first = null;
        Solver.Solve(problem, Effort.Quick, 1, new Now(() =>
        {
            first ??= clock.Seconds;
            enough.Cancel();
        }), keep: null, threads: 1, enough.Token);
        return new Row(lotSteps, problem.Activities.Length, problem.Activities.Sum(a => a.Units), first ?? double.NaN, peak / 1048576.0);
    }

    // Both axes logarithmic; the grey line is n log n through the first point.
    private static string Plot(List<Row> rows)
    {
        double X(double n) => 60 + (500 * Math.Log(n / rows[0].UnitSteps) / Math.Log((double)rows[^1].UnitSteps / rows[0].UnitSteps));
        var low = rows.Min(r => r.Seconds) / 2;
        var high = rows.Max(r => r.Seconds) * 4;
        double Y(double s) => 330 - (300 * Math.Log(s / low) / Math.Log(high / low));
        string Line(Func<Row, double> seconds) => string.Join(' ', rows.Select(r => string.Create(CultureInfo.InvariantCulture, $"{X(r.UnitSteps):0.0},{Y(seconds(r)):0.0}")));
        var svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 600 380\" font-family=\"sans-serif\" font-size=\"12\">\n");
        svg.Append("<rect width=\"600\" height=\"380\" fill=\"white\"/>\n<text x=\"60\" y=\"20\">CPU seconds to the first plan against unit-steps; grey: n log n</text>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{Line(r => rows[0].PerNLogN * r.UnitSteps * Math.Log2(r.UnitSteps))}\" fill=\"none\" stroke=\"#999\"/>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{Line(r => r.Seconds)}\" fill=\"none\" stroke=\"#036\"/>\n");
        foreach (var row in rows)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{X(row.UnitSteps):0.0}\" cy=\"{Y(row.Seconds):0.0}\" r=\"3\" fill=\"#036\"/>");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(row.UnitSteps):0.0}\" y=\"350\" text-anchor=\"middle\">{row.UnitSteps}</text>");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(row.UnitSteps) - 6:0.0}\" y=\"{Y(row.Seconds) - 8:0.0}\" text-anchor=\"end\">{row.Seconds:0.00} s</text>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }
}
