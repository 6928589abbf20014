namespace Pipeline.Scheduling;

/// <summary>
/// Fills a timetable sitting after sitting, as a painter would. Where the filling says so, each sitting is filled in several
/// ways first, and the way stays that gets most done.
/// </summary>
internal sealed class SittingFiller(Net net, Components components, Dispatcher dispatcher)
{
    private double latest;

    /// <summary>
    /// The timetable, as far as it could be filled; the groups that are not in it are left to the dispatcher.
    /// Null if what must start at a given tick cannot.
    /// </summary>
    public Timetable? Fill(Filling how)
    {
        var table = new Timetable(net);
        var fitting = new Fitting(table);
        latest = Math.Max(1, how.Keys.Max());
        if (!dispatcher.PutPinned(table, fitting))
            return null;
        var sitting = new OneSitting(net, components, dispatcher, table, fitting, how);
        var days = Enumerable.Range(0, table.Days.Length)
            .SelectMany(w => Enumerable.Range(0, table.Days[w].Length).Select(d => (Worker: w, Day: d, table.Days[w][d].Start)))
            .OrderBy(d => d.Start).ThenBy(d => d.Worker);
        var number = 0;
        foreach (var (worker, day, _) in days)
        {
            if (!sitting.HasMore)
                break;
            if (how.Choice is { } choice)
                FillAsIsBest(sitting, how, choice, worker, day, choice.Seeds[number++ % choice.Seeds.Length]);
            else
                sitting.Fill(worker, day, Shaking.None);
        }

        return table;
    }

    private void FillAsIsBest(OneSitting sitting, Filling how, Choice choice, int worker, int day, int seed)
    {
        var mark = sitting.Mark();
        var (best, last) = (Shaking.None, Shaking.None);
        var most = double.MinValue;
        for (var t = 0; t < choice.Tries; t++)
        {
            if (t > 0)
            {
                sitting.BackTo(mark);
                last = new Shaking(choice.Shake, ((seed + day) * choice.Tries) + t);
            }

            sitting.Fill(worker, day, last);
            if (Worth(sitting.Table, how, choice, worker, day, mark.Runs) is var worth && worth > most)
                (best, most) = (last, worth);
        }

        if (last == best)
            return;
        sitting.BackTo(mark);
        sitting.Fill(worker, day, best);
    }

    // What has been got done since: the work itself, and a set-up if it is the lot's first. Set-ups of further parts, clean-outs,
    // close-downs and rests are not worth anything. Time taken in other sittings is taken off.
    private double Worth(Timetable table, Filling how, Choice choice, int worker, int day, int from)
    {
        double worth = 0;
        for (var i = from; i < table.Runs.Count; i++)
        {
            var run = table.Runs[i];
            if (run.Worker < 0)
                continue;
            var a = run.Activity;
            var work = net.Work(a, run.Units) + (run.First == net.Done[a] ? net[a].SetUp + net[a].PutAway : 0);
            worth += work * (1 - (choice.UrgencyWorth * how.Keys[a] / latest) + (net.Tool[a] >= 0 ? choice.ToolWorth : 0));
            if (run.Worker != worker || run.Day != day)
                worth -= run.End - run.Start;
        }

        return worth;
    }
}
