using MediatR;
using Microsoft.Extensions.Hosting;

namespace Pipeline.Engine;

/// <summary>Watches a folder for as long as the program runs. Nothing that happens to a file or to the folder ends it.</summary>
/// <param name="folder">The folder, as a full path.</param>
/// <param name="round">Goes once through the folder.</param>
/// <param name="mediator">Tells what happened.</param>
public sealed class FolderHost(string folder, FolderRound round, IMediator mediator) : BackgroundService
{
    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // planning is work for this thread; starting up must not wait for it
        await Task.Yield();
        using var watch = new FolderWatch(folder);
        await round.SweepLeftovers().ConfigureAwait(false);
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await round.Run(stoppingToken).ConfigureAwait(false);
                await watch.Next(stoppingToken).ConfigureAwait(false);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                // a mistake of ours must not end the watch; the pause keeps it from filling the log
                await mediator.Publish(new FolderTrouble($"the program itself failed: {Faults.InWords(fault)}"), stoppingToken).ConfigureAwait(false);
                await Task.Delay(TimeSpan.FromSeconds(5), stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }
}
