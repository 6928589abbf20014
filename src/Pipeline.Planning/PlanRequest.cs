using NodaTime;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What is asked of the planner besides the batch itself.</summary>
/// <param name="From">Nothing is planned before this; in the middle of a sitting, the rest of the sitting is used.</param>
/// <param name="Effort">How hard to look for a better plan, in counted work: the same on every machine.</param>
/// <param name="Pace">Overrides the file's pace; null to keep it.</param>
/// <param name="Progress">Is told how the search is getting on.</param>
/// <param name="Seed">Starts the search's random numbers; the same seed gives the same plan.</param>
/// <param name="WithWaysOut">True to look for ways out where a due time is missed, by planning anew several times.</param>
/// <param name="Keep">An earlier plan of the batch: no more of it is moved than is worth while; null for none.</param>
/// <param name="Done">
/// What of the earlier plan had ended by then has been done as it stands there; not later than <paramref name="From"/>. Null for what that plan
/// took as done itself.
/// </param>
public sealed record PlanRequest(
    Instant From,
    SearchEffort Effort = SearchEffort.Usual,
    Pace? Pace = null,
    IProgress<PlanProgress>? Progress = null,
    ulong Seed = 1,
    bool WithWaysOut = true,
    WrittenPlan? Keep = null,
    Instant? Done = null)
{
    /// <summary>What has been done, as the earlier plan has it; null if nothing.</summary>
    public DoneWork? DoneWork => Done is { } until ? Keep?.DoneBy(until) : Keep?.Done;
}

/// <summary>How hard to look for a better plan.</summary>
public enum SearchEffort
{
    /// <summary>A good first plan.</summary>
    Quick,

    /// <summary>The everyday choice.</summary>
    Usual,

    /// <summary>Several times as much work as usual.</summary>
    Thorough,
}

/// <summary>How the search is getting on.</summary>
/// <param name="Finish">When the last piece is ready in the best plan so far.</param>
/// <param name="NotBefore">No plan can have the last piece ready before this.</param>
/// <param name="Done">The part of the work that is done, from 0 to 1.</param>
/// <param name="Anew">The plan is late and ways out are looked for: the number of the plan that is made anew; 0 before that.</param>
public sealed record PlanProgress(Instant Finish, Instant NotBefore, double Done, int Anew = 0);
