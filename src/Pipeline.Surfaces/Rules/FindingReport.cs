using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces.Rules;

/// <summary>
/// Collects findings. One cause is one finding: what a rule says at one place of the file about a scheme followed several times is one
/// finding that says how many.
/// </summary>
internal sealed class FindingReport
{
    private readonly Dictionary<Cause, Repeats> byCause = [];
    private readonly List<Finding> others = [];

    /// <summary>Adds what a rule says about a step of a route.</summary>
    public void Add(string rule, Verdict.Says verdict, Route route, Silence? silence)
    {
        var step = route.Steps[verdict.Step];
        var cause = new Cause(rule, step.Place, verdict.Level, silence?.Reason, step.Scheme is null ? verdict.Message : null);
        if (byCause.TryGetValue(cause, out var repeats))
            repeats.Add(route.Model.Name, verdict, step.FollowedFrom);
        else
            byCause.Add(cause, new Repeats(First(rule, verdict, route, step, silence), route.Model.Name, step.FollowedFrom));
    }

    /// <summary>Adds what a rule says about the batch as a whole.</summary>
    public void Add(string rule, BatchVerdict verdict, string? model, Silence? silence) => others.Add(new Finding
    {
        Rule = rule,
        Level = verdict.Level,
        Place = verdict.Place,
        Message = verdict.Message,
        Remedy = verdict.Remedy,
        Model = model,
        Areas = verdict.Areas,
        Related = verdict.Related,
        Silenced = silence?.Reason,
        Mend = silence is null ? verdict.Mend : null,
    });

    /// <summary>Adds findings that stand for themselves.</summary>
    public void AddAll(IEnumerable<Finding> findings) => others.AddRange(findings);

    /// <summary>All findings by place, then gravest first, then by rule and message.</summary>
    public Sequence<Finding> Sorted()
    {
        var all = byCause.Values.Select(repeats => repeats.AsOne()).Concat(others).ToList();
        all.Sort((left, right) =>
        {
            var order = left.Place.CompareTo(right.Place);
            if (order == 0)
                order = right.Level.CompareTo(left.Level);
            if (order == 0)
                order = string.CompareOrdinal(left.Rule, right.Rule);
            return order != 0 ? order : string.CompareOrdinal(left.Message, right.Message);
        });
        return all.ToSequence();
    }

    private static Finding First(string rule, Verdict.Says verdict, Route route, Step step, Silence? silence)
    {
        var related = new List<Related>();
        foreach (var pointer in verdict.Related)
            related.Add(new Related(route.Steps[pointer.Step].Place, pointer.Message));
        return new Finding
        {
            Rule = rule,
            Level = verdict.Level,
            Place = step.Place,
            Message = verdict.Message,
            Remedy = verdict.Remedy,
            Model = route.Model.Name,
            Areas = verdict.Areas,
            Related = related.ToSequence(),
            Silenced = silence?.Reason,
            GivesWay = verdict.GivesWay,
            Mend = silence is null ? verdict.Mend : null,
        };
    }

    // a step outside schemes has its place once, so only equal words are repeats; a scheme's step speaks of other areas each time
    private sealed record Cause(string Rule, Place Place, Level Level, string? Silenced, string? Message);

    private sealed class Repeats(Finding first, string model, Place? followedFrom)
    {
        private readonly List<string> models = [model];
        private readonly List<string> areas = [.. first.Areas];
        private readonly List<Place> followed = followedFrom is null ? [] : [followedFrom];
        private Mend? mend = first.Mend;
        private int times = 1;

        public void Add(string another, Verdict.Says verdict, Place? from)
        {
            times++;
            // one place of the file is changed in one way only
            if (verdict.Mend != mend)
                mend = null;
            if (!models.Contains(another))
                models.Add(another);
            foreach (var area in verdict.Areas)
            {
                if (!areas.Contains(area))
                    areas.Add(area);
            }

            if (from is not null && !followed.Contains(from))
                followed.Add(from);
        }

        public Finding AsOne()
        {
            var related = first.Related;
            foreach (var place in followed)
                related = related.With(new Related(place, "the scheme is followed here"));
            return times == 1
                ? first with { Related = related }
                : first with
                {
                    Message = FormattableString.Invariant($"{first.Message} ({times} times: {Wording.Named(models)})"),
                    Model = models.Count == 1 ? models[0] : null,
                    Areas = areas.ToSequence(),
                    Related = related,
                    Mend = mend,
                };
        }
    }
}
