using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Whether what has to follow a run soon finds room along with it in hours before those in which it is.</summary>
internal sealed class Following(ImmutableArray<Run> runs, Waiting waiting, Func<Run, long> closeDown)
{
    /// <summary>
    /// The first run that has to follow and finds no room behind the others, if the run started at a tick; null if all find room, or if
    /// something else keeps one of them from those hours.
    /// </summary>
    /// <param name="r">The run.</param>
    /// <param name="start">When it could start, set-up included.</param>
    /// <param name="hours">The hours in which it would then be.</param>
    /// <param name="own">The hours in which it is.</param>
    public int? WithoutRoom(int r, long start, Interval hours, Interval own)
    {
        var together = new HashSet<int> { r };
        var shift = start - runs[r].Start;
        var end = start + runs[r].End - runs[r].Start;
        for (var at = r; waiting.Tied(at).Waits is { } tied && together.Add(tied.Run); at = tied.Run)
        {
            var follower = runs[tied.Run];
            if (follower.Worker != runs[r].Worker || follower.Start < own.Start || follower.Start >= own.End)
                return null;
            var lead = follower.WorkStart - follower.Start;
            var begin = Math.Max(end, waiting.Least(tied.Run, together.Contains).At + shift - lead);
            var ticks = follower.End - follower.Start;
            if (begin + ticks + closeDown(follower) > hours.End)
                return tied.Run;
            begin = Math.Max(begin, waiting.Least(tied.Run, other => !together.Contains(other)).At - lead);
            end = begin + ticks;
            // that one waits for something else, room there is
            if (end > hours.End)
                return null;
            shift = begin - follower.Start;
        }

        return null;
    }
}
