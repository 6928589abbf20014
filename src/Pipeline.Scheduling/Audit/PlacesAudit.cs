namespace Pipeline.Scheduling;

/// <summary>No place holds more than it can. What past runs fill by themselves is a fact.</summary>
internal static class PlacesAudit
{
    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        var changes = new List<(long At, int Amount, bool Judged)>[problem.Places.Length];
        for (var p = 0; p < changes.Length; p++)
            changes[p] = [];
        foreach (var run in schedule.Runs)
        {
            foreach (var use in problem.Activities[run.Activity].Places)
            {
                for (var k = run.FirstUnit; k < run.FirstUnit + run.Units; k++)
                {
                    var from = UnitTimes.Start(problem, run, k);
                    var to = UnitTimes.Finish(problem, run, k) + use.Afterwards;
                    if (to <= from || use.PerUnit == 0)
                        continue;
                    changes[use.Place].Add((from, use.PerUnit, judged.Contains(run)));
                    changes[use.Place].Add((to, -use.PerUnit, judged.Contains(run)));
                }
            }
        }

        for (var p = 0; p < changes.Length; p++)
        {
            long level = 0;
            long judgedLevel = 0;
            foreach (var at in changes[p].GroupBy(c => c.At).OrderBy(g => g.Key))
            {
                level += at.Sum(c => c.Amount);
                judgedLevel += at.Where(c => c.Judged).Sum(c => c.Amount);
                if (level > problem.Places[p].Capacity && judgedLevel > 0)
                    faults.Add(new Fault(FaultKind.Place, $"{problem.Places[p].Name} holds {level} at {at.Key}; there is room for {problem.Places[p].Capacity}."));
            }
        }
    }
}
