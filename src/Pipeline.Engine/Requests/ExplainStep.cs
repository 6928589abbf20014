using MediatR;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Which step is meant.</summary>
public abstract record StepAt
{
    private protected abstract void Closed();

    /// <summary>The one on a line of the first file, from 1.</summary>
    public sealed record OnLine(int Line) : StepAt
    {
        private protected override void Closed() { }
    }

    /// <summary>The one that is called so: verb, areas, paint, <c>as</c> name, in any order, with or without its model.</summary>
    public sealed record Called(string Words) : StepAt
    {
        private protected override void Closed() { }
    }
}

/// <summary>Asks what a step does to the surfaces, what the rules make of it, and when it is planned and why then.</summary>
/// <param name="Inputs">The file, and those that belong to the same batch.</param>
/// <param name="At">Which step.</param>
/// <param name="Model">Of the models whose routes come by it, this one; null for the first.</param>
/// <param name="Plan">How to plan; null to leave that out.</param>
public sealed record ExplainStep(Sequence<WorkflowInput> Inputs, StepAt At, string? Model, PlanFiles? Plan = null) : IRequest<Answer<StepExplained>>;

/// <summary>What there is to say about a step.</summary>
/// <param name="Checked">What checking the files gave.</param>
/// <param name="Look">The step; null if the files cannot be understood yet.</param>
/// <param name="Others">Other models whose routes come by the same step.</param>
/// <param name="Plan">What came of planning; null if that was not asked for.</param>
/// <param name="Times">When it is planned; null if there is no plan.</param>
public sealed record StepExplained(Checked Checked, StepLook? Look, Sequence<string> Others, PlanResult? Plan = null, StepReasons? Times = null);

internal sealed class ExplainStepHandler(CheckFilesHandler check, PlanFilesHandler planner, PluginShelf plugins) : IRequestHandler<ExplainStep, Answer<StepExplained>>
{
    public Task<Answer<StepExplained>> Handle(ExplainStep request, CancellationToken cancellationToken) => Task.FromResult(check.Check(new CheckFiles(request.Inputs)) switch
    {
        Answer<Checked>.Given given => Explain(request, given.Value, cancellationToken),
        Answer<Checked>.Refused refused => new Answer<StepExplained>.Refused(refused.Why),
        var other => throw new InvalidOperationException($"Unknown answer {other}."),
    });

    private Answer<StepExplained> Explain(ExplainStep request, Checked done, CancellationToken cancel)
    {
        if (done.Walked is not { } walked)
            return new Answer<StepExplained>.Given(new StepExplained(done, null, []));
        var models = walked.Batch.Routes.Select(route => route.Model.Name).ToList();
        if (request.Model is { } asked && !models.Contains(asked))
            return Unknown.Name<StepExplained>("model", asked, models, $"There are: {string.Join(", ", models)}.");
        var (steps, refusal) = request.At switch
        {
            StepAt.OnLine on => StepsOnLine(walked, done.Texts[0], on.Line),
            StepAt.Called called => StepNamed.Find(walked, called.Words, request.Model),
            var other => throw new InvalidOperationException($"Unknown place {other}."),
        };
        if (refusal is not null)
            return new Answer<StepExplained>.Refused([refusal]);
        var coming = steps.Select(step => walked.Routes[step.Route].Route.Model.Name).Distinct().ToSequence();
        var shown = request.Model is null ? 0 : steps.ToList().FindIndex(step => walked.Routes[step.Route].Route.Model.Name == request.Model);
        if (shown < 0)
            return Unknown.Name<StepExplained>("model that comes by this line", request.Model!, coming, $"These do: {string.Join(", ", coming)}.");
        var (route, at) = steps[shown];
        var (keep, wrong) = request.Plan is null ? (null, null) : planner.Kept(done, request.Plan);
        if (wrong is not null)
            return new Answer<StepExplained>.Refused([wrong]);
        var plan = request.Plan is null ? null : planner.Plan(done, request.Plan, keep, cancel);
        return new Answer<StepExplained>.Given(new StepExplained(
            done,
            Look.At(walked, plugins.Trade, route, at),
            coming.Without(each => each == walked.Routes[route].Route.Model.Name),
            plan,
            (plan as PlanResult.Planned)?.Reasons.OfStep(route, at)));
    }

    private static (IReadOnlyList<(int Route, int Step)> Steps, Refusal? Refusal) StepsOnLine(Walked walked, SourceText text, int line)
    {
        var found = StepOnLine.Find(text, line);
        var steps = walked.Routes.SelectMany((route, index) => route.Route.Steps.Where(step => found?.Keys.Contains(step.Place) == true)
            .Select(step => (Route: index, Step: step.Index))).ToList();
        return steps.Count > 0 ? (steps, null) : ([], NoStep(line, text, walked, found));
    }

    private static Refusal NoStep(int line, SourceText text, Walked walked, StepOnLine? found)
    {
        var message = FormattableString.Invariant($"no step stands on line {line} of {text.Name}");
        var followed = walked.Routes.SelectMany(route => route.Route.Steps)
            .Where(step => step.FollowedFrom is { } from && found?.Keys.Contains(from) == true)
            .Select(step => step.Place.Line).ToList();
        if (followed.Count > 0)
            return new Refusal(message, FormattableString.Invariant($"A scheme is followed there; its steps stand on lines {followed.Min()} to {followed.Max()}."));
        var lines = walked.Routes.SelectMany(route => route.Route.Steps).Where(step => step.Place.File == text.Name).Select(step => step.Place.Line).Distinct().ToList();
        return lines.Count == 0
            ? new Refusal(message, "No route of the batch has a step in that file.")
            : new Refusal(message, FormattableString.Invariant($"Give a line on which a step stands; the nearest begins on line {lines.MinBy(each => Math.Abs(each - line))}."));
    }
}
