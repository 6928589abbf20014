using NodaTime;
using NodaTime.Text;
using Pipeline.Planning;

namespace Pipeline.Engine;

/// <summary>Whether a time up to which work is said to be done makes sense beside the plan that has it and the time to plan from.</summary>
internal static class DoneTime
{
    private static readonly ZonedDateTimePattern Pattern = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu HH':'mm", null);

    /// <summary>What is wrong with it; null if nothing is, or no time was said.</summary>
    public static Refusal? Refused(WrittenPlan keep, string path, DateTimeZone zone, PlanFiles request, Instant from)
    {
        var said = request.Done is { } done ? zone.AtLeniently(done).ToInstant() : (Instant?)null;
        if (said is { } by && keep.Done is { } known && by < known.Until)
            return new Refusal($"{path} takes work as done until {Said(known.Until)}, and {Said(by)} is before that", "Give a later time, or keep the plan before that one.");
        if (said is not null && keep.DoneBy(said.Value).Tasks.IsEmpty)
        {
            return keep.Tasks.IsEmpty
                ? new Refusal($"{path} has no task that could be done", "Leave --done out.")
                : new Refusal($"nothing of {path} is done by {Said(said.Value)}: its first task ends {Said(keep.Tasks.Min(task => task.End))}", "Give a later time, or leave --done out.");
        }

        return (said ?? keep.Done?.Until) is { } until && until > from
            ? new Refusal($"work is done until {Said(until)}, and a plan from {Said(from)} would begin before that", "Plan from the time up to which work is done, or later.")
            : null;

        string Said(Instant instant) => Pattern.Format(instant.InZone(zone));
    }
}
