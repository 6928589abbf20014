using MediatR;
using Pipeline.Abstractions;

namespace Pipeline.Engine;

/// <summary>Asks what is to be said about one or more files, taken together as one batch.</summary>
/// <param name="Inputs">At least one.</param>
/// <param name="WithEdits">True if findings shall carry the changes to the text that mend them, each tried and found to bring no other finding.</param>
public sealed record CheckFiles(Sequence<WorkflowInput> Inputs, bool WithEdits = false) : IRequest<Answer<Checked>>;

internal sealed class CheckFilesHandler(Inputs inputs, PluginShelf plugins) : IRequestHandler<CheckFiles, Answer<Checked>>
{
    public Task<Answer<Checked>> Handle(CheckFiles request, CancellationToken cancellationToken) => Task.FromResult(Check(request));

    public Answer<Checked> Check(CheckFiles request)
    {
        var (texts, refusals) = inputs.Read(request.Inputs);
        if (!refusals.IsEmpty)
            return new Answer<Checked>.Refused(refusals);
        var done = Stages.Check(texts, plugins.Trade);
        var findings = request.WithEdits ? Mender.WithSoundEdits(done, plugins.Trade) : done.Findings;
        return new Answer<Checked>.Given(done with { Findings = plugins.Findings.Concat(findings).ToSequence() });
    }
}
