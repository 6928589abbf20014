namespace Pipeline.Scheduling;

/// <summary>Least and greatest waits, unit by unit or for the lot.</summary>
internal static class WaitsAudit
{
    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        var byUnit = UnitTimes.ByUnit(schedule);
        for (var w = 0; w < problem.Waits.Length; w++)
        {
            var wait = problem.Waits[w];
            var fromLast = problem.Activities[wait.From].Units - 1;
            var toLast = problem.Activities[wait.To].Units - 1;
            if (wait.Scope == Scope.UnitByUnit)
            {
                for (var k = 0; k <= fromLast; k++)
                {
                    Judge(w, k, k, wait.Least, null);
                    Judge(w, k, k, null, wait.Greatest);
                }
            }
            else
            {
                Judge(w, fromLast, 0, wait.Least, null);
                Judge(w, 0, toLast, null, wait.Greatest);
            }
        }

        void Judge(int w, int fromUnit, int toUnit, long? least, long? greatest)
        {
            var wait = problem.Waits[w];
            var from = byUnit[(wait.From, fromUnit)];
            var to = byUnit[(wait.To, toUnit)];
            if (!judged.Contains(from) && !judged.Contains(to))
                return;
            var elapsed = At(to, toUnit, wait.ToEdge) - At(from, fromUnit, wait.FromEdge);
            if (elapsed < least)
                faults.Add(new Fault(FaultKind.Least, $"Wait {w}, units {fromUnit} and {toUnit}: {elapsed} ticks, at least {least}."));
            if (elapsed > greatest)
                faults.Add(new Fault(FaultKind.Greatest, $"Wait {w}, units {fromUnit} and {toUnit}: {elapsed} ticks, at most {greatest}."));
        }

        long At(Run run, int unit, Edge edge) =>
            edge == Edge.Start ? UnitTimes.Start(problem, run, unit) : UnitTimes.Finish(problem, run, unit);
    }
}
