using MediatR;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks what the step on a line of a file does to the surfaces, and what the rules make of it.</summary>
/// <param name="Inputs">The file, and those that belong to the same batch.</param>
/// <param name="Line">A line of the first input, from 1.</param>
/// <param name="Model">Of the models whose routes come by that line, this one; null for the first.</param>
public sealed record ExplainLine(Sequence<WorkflowInput> Inputs, int Line, string? Model) : IRequest<Answer<LineExplained>>;

/// <summary>What there is to say about a line.</summary>
/// <param name="Checked">What checking the files gave.</param>
/// <param name="Look">The step; null if the files cannot be understood yet.</param>
/// <param name="Others">Other models whose routes come by the same line.</param>
public sealed record LineExplained(Checked Checked, StepLook? Look, Sequence<string> Others);

internal sealed class ExplainLineHandler(CheckFilesHandler check, PluginShelf plugins) : IRequestHandler<ExplainLine, Answer<LineExplained>>
{
    public Task<Answer<LineExplained>> Handle(ExplainLine request, CancellationToken cancellationToken) => Task.FromResult(check.Check(new CheckFiles(request.Inputs)) switch
    {
        Answer<Checked>.Given given => Explain(request, given.Value),
        Answer<Checked>.Refused refused => new Answer<LineExplained>.Refused(refused.Why),
        var other => throw new InvalidOperationException($"Unknown answer {other}."),
    });

    private Answer<LineExplained> Explain(ExplainLine request, Checked done)
    {
        if (done.Walked is not { } walked)
            return new Answer<LineExplained>.Given(new LineExplained(done, null, []));
        var found = StepOnLine.Find(done.Texts[0], request.Line);
        var steps = walked.Routes.SelectMany((route, index) => route.Route.Steps.Where(step => found?.Keys.Contains(step.Place) == true)
            .Select(step => (Route: index, step.Index, Model: route.Route.Model.Name))).ToList();
        if (steps.Count == 0)
            return new Answer<LineExplained>.Refused([NoStep(request, done.Texts[0], walked, found)]);
        var models = steps.Select(step => step.Model).Distinct().ToSequence();
        var shown = request.Model is { } model ? steps.FindIndex(step => step.Model == model) : 0;
        return shown < 0
            ? Unknown.Name<LineExplained>("model that comes by this line", request.Model!, models, $"These do: {string.Join(", ", models)}.")
            : new Answer<LineExplained>.Given(new LineExplained(
                done,
                Look.At(walked, plugins.Trade, steps[shown].Route, steps[shown].Index),
                models.Without(each => each == steps[shown].Model)));
    }

    private static Refusal NoStep(ExplainLine request, SourceText text, Walked walked, StepOnLine? found)
    {
        var message = FormattableString.Invariant($"no step stands on line {request.Line} of {text.Name}");
        var followed = walked.Routes.SelectMany(route => route.Route.Steps)
            .Where(step => step.FollowedFrom is { } from && found?.Keys.Contains(from) == true)
            .Select(step => step.Place.Line).ToList();
        if (followed.Count > 0)
            return new Refusal(message, FormattableString.Invariant($"A scheme is followed there; its steps stand on lines {followed.Min()} to {followed.Max()}."));
        var lines = walked.Routes.SelectMany(route => route.Route.Steps).Where(step => step.Place.File == text.Name).Select(step => step.Place.Line).Distinct().ToList();
        return lines.Count == 0
            ? new Refusal(message, "No route of the batch has a step in that file.")
            : new Refusal(message, FormattableString.Invariant($"Give a line on which a step stands; the nearest begins on line {lines.MinBy(line => Math.Abs(line - request.Line))}."));
    }
}
