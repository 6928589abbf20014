using System.Globalization;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Reads the public formats of project and job shop instances into problems.</summary>
internal static class InstanceFiles
{
    /// <summary>Single-mode project scheduling, the .sm format of Kolisch and Sprecher (1996).</summary>
    public static Problem Sm(string text)
    {
        var lines = text.Split('\n').Select(l => l.Trim()).ToList();
        var relations = lines.FindIndex(l => l.StartsWith("PRECEDENCE RELATIONS", StringComparison.Ordinal));
        var requests = lines.FindIndex(l => l.StartsWith("REQUESTS/DURATIONS", StringComparison.Ordinal));
        var available = lines.FindIndex(l => l.StartsWith("RESOURCEAVAILABILITIES", StringComparison.Ordinal));
        var jobs = Rows(lines, requests + 3);
        var capacities = Rows(lines, available + 2)[0];
        var waits = Rows(lines, relations + 2)
            .SelectMany(row => row.Skip(3).Select(to => new Wait(row[0] - 1, Edge.Finish, to - 1, Edge.Start, 0, null)));
        return Project(capacities, [.. jobs.Select(row => (row[2], row.Skip(3).ToArray()))], waits);
    }

    /// <summary>Generalized precedence, the .sch format of Schwindt's generator: an arc with [w] means start(j) ≥ start(i) + w.</summary>
    public static Problem Sch(string text)
    {
        var lines = text.Split('\n').Select(l => l.Replace("[", " ", StringComparison.Ordinal).Replace("]", " ", StringComparison.Ordinal).Trim())
            .Where(l => l.Length > 0).Select(Numbers).ToList();
        var count = lines[0][0] + 2;
        var arcs = lines.Skip(1).Take(count).ToList();
        var jobs = lines.Skip(1 + count).Take(count).ToList();
        var waits = new List<Wait>();
        foreach (var row in arcs)
        {
            for (var i = 0; i < row[2]; i++)
            {
                var weight = row[3 + row[2] + i];
                waits.Add(weight >= 0
                    ? new Wait(row[0], Edge.Start, row[3 + i], Edge.Start, weight, null)
                    : new Wait(row[3 + i], Edge.Start, row[0], Edge.Start, null, -weight));
            }
        }

        return Project(lines[1 + (2 * count)], [.. jobs.Select(row => (row[2], row.Skip(3).ToArray()))], waits);
    }

    /// <summary>Job shop: a line per job of "machine duration" pairs, machines from 0.</summary>
    public static Problem JobShop(string text)
    {
        var lines = text.Split('\n').Where(l => l.Trim().Length > 0 && !l.StartsWith('#')).Select(Numbers).ToList();
        var machines = lines[0][1];
        var jobs = new List<(int, int[])>();
        var waits = new List<Wait>();
        foreach (var row in lines.Skip(1).Take(lines[0][0]))
        {
            for (var i = 0; i < machines; i++)
            {
                var demand = new int[machines];
                demand[row[2 * i]] = 1;
                if (i > 0)
                    waits.Add(new Wait(jobs.Count - 1, Edge.Finish, jobs.Count, Edge.Start, 0, null));
                jobs.Add((row[(2 * i) + 1], demand));
            }
        }

        return Project(Enumerable.Repeat(1, machines).ToArray(), jobs, waits);
    }

    /// <summary>The longest chain of waits, without places.</summary>
    public static long CriticalPath(Problem problem)
    {
        var starts = new long[problem.Activities.Length];
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var wait in problem.Waits.Where(w => w.Least is not null))
            {
                var from = starts[wait.From] + wait.Least!.Value + (wait.FromEdge == Edge.Finish ? problem.Activities[wait.From].Unattended : 0);
                if (from <= starts[wait.To])
                    continue;
                starts[wait.To] = from;
                changed = true;
            }
        }

        return Enumerable.Range(0, starts.Length).Max(i => starts[i] + problem.Activities[i].Unattended);
    }

    private static Problem Project(int[] capacities, IReadOnlyList<(int Duration, int[] Demand)> jobs, IEnumerable<Wait> waits) => new()
    {
        Places = [.. capacities.Select((c, r) => new Place($"R{r + 1}", c))],
        Activities = [.. jobs.Select((job, i) => new Activity
        {
            Name = $"job {i}",
            Unattended = job.Duration,
            Places = [.. job.Demand.Select((amount, r) => new PlaceUse(r, amount, 0)).Where(u => u.PerUnit > 0)],
        })],
        Waits = [.. waits],
    };

    private static List<int[]> Rows(List<string> lines, int from) =>
        [.. lines.Skip(from).TakeWhile(l => l.Length > 0 && char.IsAsciiDigit(l[0])).Select(Numbers)];

    private static int[] Numbers(string line) =>
        [.. line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
}
