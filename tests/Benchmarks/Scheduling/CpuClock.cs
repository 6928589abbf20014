using System.Diagnostics;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Rings when this process has used so many CPU seconds more; on a busy machine the fair measure.</summary>
internal sealed class CpuClock : IDisposable
{
    private readonly TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
    private readonly CancellationTokenSource over = new();
    private readonly Timer timer;

    /// <summary>Starts at once.</summary>
    public CpuClock(double seconds = double.PositiveInfinity) => timer = new Timer(
        _ =>
        {
            if (Seconds >= seconds)
                over.Cancel();
        },
        null,
        dueTime: 20,
        period: 20);

    public CancellationToken Over => over.Token;

    /// <summary>CPU seconds so far.</summary>
    public double Seconds => (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds;

    public void Dispose()
    {
        using var still = new ManualResetEvent(initialState: false);
        timer.Dispose(still);
        still.WaitOne();
        over.Dispose();
    }
}
