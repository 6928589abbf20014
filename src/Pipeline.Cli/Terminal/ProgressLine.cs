using MediatR;
using Pipeline.Engine;

namespace Pipeline.Cli;

/// <summary>One line on a terminal that says how the search is getting on, written over and taken away at the end.</summary>
internal sealed class ProgressLine(TextWriter terminal) : INotificationHandler<PlanProgressed>, IDisposable
{
    private string shown = "";

    public Task Handle(PlanProgressed notification, CancellationToken cancellationToken)
    {
        var progress = notification.Progress;
        var text = progress.Anew > 0
            ? FormattableString.Invariant($"late, ready {progress.Finish.InZone(notification.Zone):uuuu-MM-dd HH:mm}; looking for ways out, planning anew {progress.Anew}")
            : FormattableString.Invariant($"planning {progress.Done * 100:0} %  ready {progress.Finish.InZone(notification.Zone):uuuu-MM-dd HH:mm}, not before {progress.NotBefore.InZone(notification.Zone):uuuu-MM-dd HH:mm}");
        if (text != shown)
        {
            terminal.Write($"\r{text.PadRight(shown.Length)}");
            terminal.Flush();
            shown = text;
        }

        return Task.CompletedTask;
    }

    public void Dispose()
    {
        if (shown.Length > 0)
            terminal.Write($"\r{new string(' ', shown.Length)}\r");
        shown = "";
    }
}
