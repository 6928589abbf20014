using System.Runtime.InteropServices;
using MediatR;
using Pipeline.Engine;

namespace Pipeline.Cli;

/// <summary>Asks the engine for something that takes a search: with a line of progress, and Ctrl-C for the best so far.</summary>
internal static class Searching
{
    /// <summary>The answer, and whether it was asked to stop before.</summary>
    public static async Task<(T Answer, bool WasStopped)> Send<T>(EngineParts parts, IRequest<T> request)
    {
        using var stop = new CancellationTokenSource();
        using var progress = Screen.CanShowProgress ? new ProgressLine(Console.Error) : null;
        var engine = Composition.Engine(parts, listen =>
        {
            if (progress is not null)
                listen.Listens<PlanProgressed>(progress);
        });
        using (PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop))
        using (PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop))
            return (await engine.Send(request, stop.Token).ConfigureAwait(false), stop.IsCancellationRequested);

        void Stop(PosixSignalContext signal)
        {
            // the first asks for the best so far; a second ends the program as usual
            signal.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
        }
    }
}
