using MediatR;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for the trade's tables: as the plugins bring them, or as they hold for workflow files.</summary>
/// <param name="Inputs">The files of one batch; empty for none.</param>
public sealed record ShowTables(Sequence<WorkflowInput> Inputs) : IRequest<Answer<TablesShown>>;

/// <summary>The trade's tables.</summary>
/// <param name="Rows">Their rows; null if the files cannot be understood yet.</param>
/// <param name="Checked">What checking the files gave; null without files.</param>
public sealed record TablesShown(TableRows? Rows, Checked? Checked);

internal sealed class ShowTablesHandler(CheckFilesHandler check, PluginShelf plugins) : IRequestHandler<ShowTables, Answer<TablesShown>>
{
    public Task<Answer<TablesShown>> Handle(ShowTables request, CancellationToken cancellationToken) => Task.FromResult<Answer<TablesShown>>(
        request.Inputs.IsEmpty
            ? new Answer<TablesShown>.Given(new TablesShown(TablesOf.Trade(plugins.Trade).Rows, null))
            : check.Check(new CheckFiles(request.Inputs)) switch
            {
                Answer<Checked>.Given { Value: var done } => new Answer<TablesShown>.Given(new TablesShown(done.Walked?.Batch.Tables.Rows, done)),
                Answer<Checked>.Refused refused => new Answer<TablesShown>.Refused(refused.Why),
                var other => throw new InvalidOperationException($"Unknown answer {other}."),
            });
}
