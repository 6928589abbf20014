namespace Pipeline.Scheduling;

/// <summary>The latest own start of every unit if all is to be finished by some time and what is pinned is kept: the heads' mirror image.</summary>
internal sealed class Deadlines(Net net, Components components, Hours hours)
{
    // A tied group may need many rounds to settle; stopping early leaves deadlines that are later, and so still true.
    private const int MostRounds = 60;

    /// <summary>Fills the array; −<see cref="Hours.Never"/> where a unit fits into no open hours before the deadline.</summary>
    public void Fill(long finish, long[] latest) => Fill(Enumerable.Repeat(finish, net.Count).ToArray(), latest);

    /// <summary>The same if each activity is to be finished by a time of its own.</summary>
    public void Fill(long[] finish, long[] latest)
    {
        for (var a = 0; a < net.Count; a++)
        {
            var first = finish[a] - net.Duration[a] - ((net.Units[a] - 1) * net.Step[a]);
            first = Math.Min(first, net.LatestPinned(a) ?? first);
            for (var k = 0; k < net.Units[a]; k++)
                latest[net.Offset[a] + k] = first + (k * net.Step[a]);
        }

        net.FillPast(latest);
        for (var g = components.Groups.Length - 1; g >= 0; g--)
        {
            var rounds = components.IsTied[g] ? MostRounds : 1;
            for (var round = 0; round < rounds; round++)
            {
                var changed = false;
                for (var i = components.Groups[g].Length - 1; i >= 0; i--)
                    changed |= Lower(components.Groups[g][i], latest);
                if (!changed)
                    break;
            }
        }
    }

    private bool Lower(int a, long[] latest)
    {
        var changed = false;
        for (var k = net.Units[a] - 1; k >= net.Done[a]; k--)
        {
            var at = latest[net.Offset[a] + k];
            if (k + 1 < net.Units[a])
                at = Math.Min(at, latest[net.Offset[a] + k + 1] - net.Step[a]);
            foreach (var arc in net.Out[a])
            {
                if (!arc.Whole)
                    at = Math.Min(at, latest[net.Offset[arc.To] + k] - arc.Lag);
                else if (k == net.Units[a] - 1)
                    at = Math.Min(at, latest[net.Offset[arc.To]] - arc.Lag);
            }

            at = Math.Max(-Hours.Never, hours.PreviousStart(a, k, at));
            if (at >= latest[net.Offset[a] + k])
                continue;
            latest[net.Offset[a] + k] = at;
            changed = true;
        }

        return changed;
    }
}
