using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>Stops a solve at its next solution, for a cancel that came before it had begun.</summary>
internal sealed class StopWhenAsked(CancellationToken cancel) : CpSolverSolutionCallback
{
    public override void OnSolutionCallback()
    {
        if (cancel.IsCancellationRequested)
            StopSearch();
    }
}
