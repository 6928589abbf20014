namespace Pipeline.Scheduling;

/// <summary>
/// No place holds more than it can, every piece counted once however many of its stays run there. What past runs fill by themselves is a fact.
/// </summary>
internal static class PlacesAudit
{
    // What stands in a place, and by how much: a unit of a lot, or of one activity where that has no lot.
    private readonly record struct Piece(int? Lot, int Activity, int Unit, int Amount);

    private sealed class Standing
    {
        public int Stays;
        public int Judged;
    }

    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        for (var p = 0; p < problem.Places.Length; p++)
        {
            var changes = new List<(long At, int Change, Piece Piece, bool Judged)>();
            foreach (var run in schedule.Runs)
            {
                var activity = problem.Activities[run.Activity];
                foreach (var use in activity.Places.Where(use => use.Place == p && use.PerUnit > 0))
                {
                    for (var k = run.FirstUnit; k < run.FirstUnit + run.Units; k++)
                    {
                        var from = UnitTimes.Start(problem, run, k);
                        var to = UnitTimes.Finish(problem, run, k) + use.Afterwards;
                        if (to <= from)
                            continue;
                        var piece = new Piece(activity.Lot, activity.Lot is null ? run.Activity : -1, k, use.PerUnit);
                        changes.Add((from, 1, piece, judged.Contains(run)));
                        changes.Add((to, -1, piece, judged.Contains(run)));
                    }
                }
            }

            Judge(problem.Places[p], changes, faults);
        }
    }

    private static void Judge(Place place, List<(long At, int Change, Piece Piece, bool Judged)> changes, List<Fault> faults)
    {
        var standing = new Dictionary<Piece, Standing>();
        long level = 0;
        long added = 0;
        foreach (var moment in changes.GroupBy(change => change.At).OrderBy(group => group.Key))
        {
            foreach (var (_, change, piece, isJudged) in moment)
            {
                if (!standing.TryGetValue(piece, out var there))
                    standing[piece] = there = new Standing();
                level -= there.Stays > 0 ? piece.Amount : 0;
                added -= there.Stays > 0 && there.Stays == there.Judged ? piece.Amount : 0;
                there.Stays += change;
                there.Judged += isJudged ? change : 0;
                level += there.Stays > 0 ? piece.Amount : 0;
                added += there.Stays > 0 && there.Stays == there.Judged ? piece.Amount : 0;
            }

            if (level > place.Capacity && added > 0)
                faults.Add(new Fault(FaultKind.Place, $"{place.Name} holds {level} at {moment.Key}; there is room for {place.Capacity}."));
        }
    }
}
