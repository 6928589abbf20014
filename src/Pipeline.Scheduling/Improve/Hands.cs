namespace Pipeline.Scheduling;

/// <summary>
/// What every worker and tool is about while a sequence is timed, and when the next run can be taken up.
/// Per worker: free from, open interval, ticks kept for close-downs at its end, attended ticks of the day besides those;
/// per tool: load, free from, worker who must close it down, end of the interval in which it was used, ticks used in it.
/// </summary>
internal sealed class Hands(Ground ground)
{
    private readonly Net net = ground.Net;
    private readonly int workers = ground.Net.Problem.Workers.Length;

    public long[] Now { get; } = new long[ground.StateSize];

    /// <summary>Takes a run up as early as can be; false if it never can.</summary>
    public bool Time(ref Slot slot, long workFrom, long startFrom, Occupancy places) => net.Attended[slot.Activity]
        ? TimeAttended(ref slot, workFrom, startFrom, places)
        : TimeAlone(ref slot, Math.Max(workFrom, startFrom), places);

    private static bool TimeAlone(ref Slot slot, long from, Occupancy places)
    {
        var start = places.EarliestFit(slot.Activity, slot.First, slot.Units, from);
        if (start == long.MaxValue)
            return false;
        slot.Start = slot.WorkStart = slot.End = start;
        slot.Worker = slot.Day = slot.ToolNumber = -1;
        slot.CleanOut = slot.Closing = 0;
        slot.Packing = 0;
        return true;
    }

    private bool TimeAttended(ref Slot slot, long workFrom, long startFrom, Occupancy places)
    {
        var a = slot.Activity;
        var open = net.Open[slot.Worker];
        var w = slot.Worker * Ground.PerWorker;
        var day = (int)Now[w + 1];
        var setUp = net[a].SetUp;
        var rest = net.Work(a, slot.Units) + net[a].PutAway;
        slot.Closing = 0;
        slot.Packing = 0;
        var most = net.MostPerDay[slot.Worker];
        var free = Math.Max(Now[w], startFrom);
        var tool = net.Tool[a] < 0 ? -1 : ChooseTool(a, slot.ToolWish, Math.Max(free, workFrom - setUp));
        // days that end too soon need not be looked at one by one
        if (day < open.Length && open[day].End < Math.Max(free, workFrom))
            day = Sorted.FirstLater(open, Math.Max(free, workFrom) - 1, static each => each.End, day);
        for (; day < open.Length; day++)
        {
            var tail = day == Now[w + 1] ? Now[w + 2] : 0;
            var used = Used(slot.Worker, day);
            var start = Math.Max(free, open[day].Start);
            long cleanOut = 0;
            if (tool >= 0)
            {
                start = Math.Max(start, Now[tool + 1]);
                var held = Now[tool] >= 0 && start < Now[tool + 3] ? (int)Now[tool] : -1;
                cleanOut = net.CleanOut(net.Tool[a], held, net.Load[a]);
                if (start + cleanOut + setUp < workFrom)
                {
                    start = workFrom - setUp - cleanOut;
                    held = Now[tool] >= 0 && start < Now[tool + 3] ? (int)Now[tool] : -1;
                    cleanOut = net.CleanOut(net.Tool[a], held, net.Load[a]);
                    start = Math.Max(start, workFrom - setUp - cleanOut);
                }

                if (held >= 0 && Now[tool + 2] == slot.Worker && Now[tool + 3] == open[day].End)
                    tail -= net.Problem.Tools[net.Tool[a]].CloseDown[held];
                tail += net.Problem.Tools[net.Tool[a]].CloseDown[net.Load[a]];
            }
            else
                start = Math.Max(start, workFrom - setUp);

            if (net.Stays[a].Length > 0)
            {
                var fit = places.EarliestFit(a, slot.First, slot.Units, start + cleanOut + setUp);
                if (fit == long.MaxValue)
                    return false;
                start = fit - cleanOut - setUp;
                if (tool >= 0 && cleanOut != net.CleanOut(net.Tool[a], Now[tool] >= 0 && start < Now[tool + 3] ? (int)Now[tool] : -1, net.Load[a]))
                    return false;
            }

            var end = start + cleanOut + setUp + rest;
            if (end + tail > open[day].End || start >= open[day].End || used + (end - start) + tail > most)
                continue;
            Take(ref slot, tool, day, start, cleanOut, end, tail, used);
            return true;
        }

        return false;
    }

    // Attended ticks of the day of an open interval so far; what is closed down at the end of an interval before it is done.
    private long Used(int worker, int day)
    {
        var w = worker * Ground.PerWorker;
        return day == Now[w + 1] ? Now[w + 3] : net.Day[worker][day] == net.Day[worker][Now[w + 1]] ? Now[w + 2] + Now[w + 3] : 0;
    }

    private void Take(ref Slot slot, int tool, int day, long start, long cleanOut, long end, long tail, long used)
    {
        var w = slot.Worker * Ground.PerWorker;
        slot.Start = start;
        slot.CleanOut = cleanOut;
        // a rest that is only there because something was put off is nothing to be glad of
        slot.Packing = Now[w + 1] == day || slot.Delay == net.Open[slot.Worker][day].Start ? 0 : Rests(slot.Worker, day);
        if (tool >= 0)
        {
            var hasOpened = Now[tool] >= 0 && start < Now[tool + 3];
            var before = hasOpened ? Now[tool + 4] : 0;
            Now[tool + 4] = before + end - start - cleanOut;
            slot.Packing -= ground.Session(net.Tool[slot.Activity], before, Now[tool + 4]);
            var loads = net.Problem.Tools[net.Tool[slot.Activity]].CloseDown;
            slot.Closing = loads[net.Load[slot.Activity]] - (Now[tool + 2] >= 0 && start < Now[tool + 3] ? loads[(int)Now[tool]] : 0);
        }

        slot.WorkStart = start + cleanOut + net[slot.Activity].SetUp;
        slot.End = end;
        slot.Day = day;
        slot.ToolNumber = -1;
        if (tool >= 0)
        {
            slot.ToolNumber = ((tool - (workers * Ground.PerWorker)) / Ground.PerTool) - ground.ToolStart[net.Tool[slot.Activity]];
            var owner = Now[tool + 2];
            if (owner >= 0 && owner != slot.Worker && start < Now[tool + 3] && Now[tool + 3] == EndOfDay(owner))
                Now[(owner * Ground.PerWorker) + 2] -= net.Problem.Tools[net.Tool[slot.Activity]].CloseDown[(int)Now[tool]];
            Now[tool] = net.Load[slot.Activity];
            Now[tool + 1] = end;
            Now[tool + 2] = slot.Worker;
            Now[tool + 3] = net.Open[slot.Worker][day].End;
        }

        if (workers == 1 && Now[w + 1] != day)
            PutDownTools(tool);
        Now[w] = end;
        Now[w + 1] = day;
        Now[w + 2] = tail;
        Now[w + 3] = used + (end - start);
    }

    // What was used on another day is clean and free: so that states become alike sooner.
    private void PutDownTools(int but)
    {
        for (var t = workers * Ground.PerWorker; t < Now.Length; t += Ground.PerTool)
        {
            if (t == but)
                continue;
            Now[t] = Now[t + 2] = -1;
            Now[t + 4] = 0;
            Now[t + 1] = Now[t + 3] = long.MinValue / 4;
        }
    }

    // One long rest is better than many short ones: something fits into it.
    private double Rests(int worker, int day)
    {
        var w = worker * Ground.PerWorker;
        var open = net.Open[worker];
        var left = open[(int)Now[w + 1]];
        double rest = Math.Max(0, left.End - Now[w + 2] - Math.Max(left.Start, Now[w]));
        var reward = rest * rest / left.Length;
        for (var d = (int)Now[w + 1] + 1; d < day; d++)
            reward += open[d].Length;
        return reward;
    }

    private long EndOfDay(long worker)
    {
        var day = Now[(worker * Ground.PerWorker) + 1];
        return net.Open[worker][day].End;
    }

    // Of several tools alike: the one that is ready soonest, what has to be closed down for it counted too.
    private int ChooseTool(int a, int wish, long from)
    {
        var t = net.Tool[a];
        var first = (workers * Ground.PerWorker) + (ground.ToolStart[t] * Ground.PerTool);
        if (net.Problem.Tools[t].Count == 1 || wish >= 0)
            return first + (Math.Max(0, wish) * Ground.PerTool);
        var closeDown = net.Problem.Tools[t].CloseDown;
        var best = -1;
        (long, long) least = default;
        for (var n = 0; n < net.Problem.Tools[t].Count; n++)
        {
            var at = first + (n * Ground.PerTool);
            var start = Math.Max(from, Now[at + 1]);
            var held = Now[at] >= 0 && start < Now[at + 3] ? (int)Now[at] : -1;
            var cleanOut = net.CleanOut(t, held, net.Load[a]);
            var closing = closeDown[net.Load[a]] - (held < 0 ? 0 : closeDown[held]);
            if (best < 0 || (start + cleanOut + closing, cleanOut).CompareTo(least) < 0)
                (best, least) = (at, (start + cleanOut + closing, cleanOut));
        }

        return best;
    }
}
