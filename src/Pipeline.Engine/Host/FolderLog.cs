using MediatR;
using NodaTime.Text;
using Serilog;

namespace Pipeline.Engine;

/// <summary>One line in the log per event.</summary>
internal sealed class FolderLog(ILogger log) : INotificationHandler<FileArrived>, INotificationHandler<PlanWritten>, INotificationHandler<FolderTrouble>
{
    private static readonly ZonedDateTimePattern Minute = ZonedDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm", null);

    public Task Handle(FileArrived notification, CancellationToken cancellationToken)
    {
        log.Information("{File:l}: planning", Faults.OnOneLine(notification.Name));
        return Task.CompletedTask;
    }

    public Task Handle(PlanWritten notification, CancellationToken cancellationToken)
    {
        var name = Faults.OnOneLine(notification.Name);
        switch (notification.Result)
        {
            case HostResult.Planned when notification.LastReady is { } ready:
                log.Information("{File:l}: planned, the last model is ready {Ready:l}", name, Minute.Format(ready));
                break;
            case HostResult.Planned:
                log.Information("{File:l}: planned, there is nothing to do", name);
                break;
            case HostResult.Findings:
                log.Warning("{File:l}: not planned, errors: {Errors}", name, notification.Errors);
                break;
            case HostResult.NoPlan:
                log.Warning("{File:l}: no plan meets what it asks", name);
                break;
            case HostResult.Broke:
                log.Error("{File:l}: the program itself failed on it", name);
                break;
        }

        return Task.CompletedTask;
    }

    public Task Handle(FolderTrouble notification, CancellationToken cancellationToken)
    {
        log.Warning("{Trouble:l}", Faults.OnOneLine(notification.Message));
        return Task.CompletedTask;
    }
}
