using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>From a walked batch to days, sittings and tasks. Pure: the same input gives the same plan on every machine.</summary>
public static class Planner
{
    /// <summary>Plans a batch.</summary>
    /// <param name="walked">The batch, walked without an error.</param>
    /// <param name="trade">What the plugins brought, for the clean-out times.</param>
    /// <param name="request">From when, how hard to try.</param>
    /// <param name="cancel">Stops the search; the best plan so far is returned, if there is one.</param>
    /// <returns>A plan, or the reasons why there is none.</returns>
    public static PlanOutcome Plan(Walked walked, Trade trade, PlanRequest request, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(trade);
        ArgumentNullException.ThrowIfNull(request);
        _ = cancel;
        throw new NotSupportedException("Posing and laying out follow in the next commits of this branch.");
    }
}
