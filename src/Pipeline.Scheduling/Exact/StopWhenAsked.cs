using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>Asked between solutions; a solve that has found none goes on to its budget.</summary>
internal sealed class StopWhenAsked(CancellationToken cancel) : CpSolverSolutionCallback
{
    public override void OnSolutionCallback()
    {
        if (cancel.IsCancellationRequested)
            StopSearch();
    }
}
