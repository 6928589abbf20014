using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>Tells of progress at once; Progress of T would do so on another thread, later.</summary>
internal sealed class Now(Action tell) : IProgress<SolveProgress>
{
    public void Report(SolveProgress value) => tell();
}
