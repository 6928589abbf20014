using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>A piece is due before its work is done, or before its last coat is dry enough for what it is wanted for.</summary>
public sealed class DueTooSoon : TradePlanRule
{
    /// <inheritdoc/>
    public override string Summary => "When a piece is due, its last coat can be handled; wanted for play or packing, it has cured.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgePlan(PlanView plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Ready.Where(ready => ready.Due is not null && ready.Comfortable > ready.Due.By)
            .GroupBy(ready => ready.Due!.Place)
            .OrderBy(group => group.Key)
            .Select(group => Verdict(plan, [.. group]));
    }

    private static BatchVerdict Verdict(PlanView plan, List<ReadyView> at)
    {
        var late = at.FindAll(ready => ready.Ready > ready.Due!.By);
        var isLate = late.Count > 0;
        var told = isLate ? late : at;
        var worst = told.MaxBy(ready => isLate ? ready.Ready : ready.Comfortable)!;
        var models = told.ConvertAll(ready => plan.Batch.Routes[ready.Last.Route].Model);
        return new BatchVerdict
        {
            Level = isLate ? Level.Error : Level.Warning,
            Place = worst.Due!.Place,
            Step = worst.Last,
            Message = isLate ? Late(plan, worst, models) : Risky(plan, worst, models),
            Remedy = Remedy(plan, worst, isLate),
            Related = told.ConvertAll(ready => new Related(
                plan.Batch.Routes[ready.Last.Route].Model.Place, $"ready {Moment(isLate ? ready.Ready : ready.Comfortable)}")).ToSequence(),
        };
    }

    private static string Late(PlanView plan, ReadyView worst, List<Model> models)
    {
        var by = worst.Due!.By;
        var when = worst.WorkDone > by ? "" : $", when its last coat {State(plan, worst)}";
        var ready = plan.IsWhole ? $"the earliest found is {Moment(worst.Ready, by)}{when}" : $"with the times you have decided it is {Moment(worst.Ready, by)}{when}";
        return $"{Listed(models)} cannot be done by {Moment(by, worst.Ready)}: {ready}, {Length(worst.LateMinutes)} late. {worst.WhyNotEarlier}".TrimEnd();
    }

    private static string Risky(PlanView plan, ReadyView worst, List<Model> models) =>
        $"By {Moment(worst.Due!.By, worst.Comfortable)} the last coat of {Listed(models)} may not be there yet: from {Moment(worst.Comfortable, worst.Due.By)} on it surely {State(plan, worst)}.";

    private static string Remedy(PlanView plan, ReadyView worst, bool isLate)
    {
        var family = worst.WorkDone > worst.Due!.By ? "" : "end with a family that dries faster, ";
        if (isLate && worst.WhatHelps.Length > 0)
            return worst.WhatHelps;
        return plan.IsWhole && isLate
            ? $"Add a sitting, begin earlier, {family}move the due time, leave less of each sitting free ('slack' at the bench), or plan at a brisk pace and read what it risks."
            : $"Do it earlier, {family}or move the due time.";
    }

    private static string State(PlanView plan, ReadyView ready) =>
        plan.Batch.Routes[ready.Last.Route].Model.Purpose == Purpose.Display ? "can be handled" : "has cured";

    // With its year beside a time of another.
    private static string Moment(DateTime time, DateTime beside) => time.ToString(time.Year == beside.Year ? "ddd d MMM HH:mm" : "ddd d MMM yyyy HH:mm", CultureInfo.InvariantCulture);

    private static string Moment(DateTime time) => Moment(time, time);

    // As the head of a plan says it.
    private static string Length(int minutes) => minutes switch
    {
        < 60 => FormattableString.Invariant($"{minutes} min"),
        < 1440 => FormattableString.Invariant($"{minutes / 60} h{(minutes % 60 > 0 ? $" {minutes % 60} min" : "")}"),
        <= 60 * 1440 => FormattableString.Invariant($"{minutes / 1440} d{(minutes % 1440 >= 60 ? $" {minutes % 1440 / 60} h" : "")}"),
        _ => FormattableString.Invariant($"{minutes / (7 * 1440)} weeks"),
    };

    private static string Listed(List<Model> models) => models.Count == 1
        ? models[0].Name
        : $"{string.Join(", ", models.Take(models.Count - 1).Select(model => model.Name))} and {models[^1].Name}";
}
