namespace Pipeline.Scheduling;

/// <summary>
/// Puts tasks with greatest waits in one after another. One that finds no room before its latest start makes those
/// that set this latest start go later, and all that started after them is put in anew
/// (the unscheduling step of Franck, Neumann and Schwindt 2001).
/// </summary>
internal sealed class LagSchedule : IListScheme
{
    private readonly Tasks tasks;
    private readonly LongestWays forwards;
    private readonly LongestWays backwards;
    private readonly Room room;
    private readonly int[] earliest;
    private readonly int[] latest;
    private readonly int[] release;
    private readonly int[] at;
    private long steps;

    public LagSchedule(Tasks tasks, LongestWays ways)
    {
        this.tasks = tasks;
        forwards = ways;
        backwards = ways.Mirrored();
        room = new Room(tasks);
        earliest = new int[tasks.Count];
        latest = new int[tasks.Count];
        release = new int[tasks.Count];
        at = new int[tasks.Count];
    }

    public long Work => steps + room.Looks;

    public long? Forward(int[] list, long[] starts) => Fill(list, starts, forwards);

    public long? Backward(int[] list, long[] starts) => Fill(list, starts, backwards);

    private long? Fill(int[] list, long[] starts, LongestWays ways)
    {
        room.Clear();
        Array.Copy(ways.NotBefore, release, release.Length);
        Array.Copy(release, earliest, release.Length);
        Array.Fill(latest, int.MaxValue / 4);
        Array.Fill(at, -1);
        var movesLeft = list.Length;
        for (var p = 0; p < list.Length; p++)
        {
            var i = list[p];
            if (at[i] >= 0)
                continue;
            var start = (int)room.Earliest(i, earliest[i]);
            if (start <= latest[i])
            {
                Put(i, start, ways);
                continue;
            }

            if (movesLeft-- == 0)
                return null;
            TakeOut(i, start, ways);
            p = -1;
        }

        long finish = 0;
        for (var i = 0; i < at.Length; i++)
        {
            starts[i] = at[i];
            finish = Math.Max(finish, at[i] + tasks.Duration[i]);
        }

        return finish;
    }

    private void Put(int i, int start, LongestWays ways)
    {
        steps += 8 + (at.Length / 8);
        at[i] = start;
        room.Take(i, start);
        LongestWays.Raise(earliest, ways.From[i], start);
        LongestWays.Lower(latest, ways.To[i], start);
    }

    private void TakeOut(int i, int start, LongestWays ways)
    {
        var late = start - latest[i];
        var from = int.MaxValue;
        for (var j = 0; j < at.Length; j++)
        {
            if (at[j] < 0 || at[j] - ways.From[i][j] != latest[i])
                continue;
            from = Math.Min(from, at[j]);
            release[j] = Math.Max(release[j], at[j] + late);
        }

        Array.Copy(release, earliest, release.Length);
        Array.Fill(latest, int.MaxValue / 4);
        for (var j = 0; j < at.Length; j++)
        {
            steps += 1 + (at.Length / 8);
            LongestWays.Raise(earliest, ways.From[j], release[j]);
            if (at[j] < 0)
                continue;
            if (at[j] >= from)
            {
                room.GiveBack(j, at[j]);
                at[j] = -1;
                continue;
            }

            LongestWays.Raise(earliest, ways.From[j], at[j]);
            LongestWays.Lower(latest, ways.To[j], at[j]);
        }
    }
}
