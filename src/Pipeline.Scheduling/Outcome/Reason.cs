namespace Pipeline.Scheduling;

/// <summary>The one thing that keeps a run from starting earlier.</summary>
public abstract record Reason
{
    private protected abstract void Close();

    /// <summary>It has already happened.</summary>
    public sealed record Fact : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>It is pinned there.</summary>
    public sealed record Pinned : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>It may not start before this.</summary>
    public sealed record NotBefore : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>A least wait after another run, or a greatest one that ties it to a later run.</summary>
    /// <param name="Wait">Index of the wait.</param>
    /// <param name="Unit">The unit that has to wait.</param>
    /// <param name="Run">Index of the run at the other end.</param>
    public sealed record Waits(int Wait, int Unit, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>Units go through in order: the run before it of the same activity.</summary>
    public sealed record UnitOrder(int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>The worker is busy with another run.</summary>
    public sealed record WorkerBusy(int Worker, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>The worker is busy closing down a tool.</summary>
    /// <param name="CloseDown">Index of the close-down.</param>
    /// <param name="Run">Index of the run that used the tool last.</param>
    public sealed record ClosingDown(int CloseDown, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>The tool is in another run's hands.</summary>
    public sealed record ToolHeld(int Tool, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>A place is full.</summary>
    /// <param name="Place">Index of the place.</param>
    /// <param name="Run">Index of a run whose units make room.</param>
    public sealed record PlaceFull(int Place, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>What it waits for is over only after the worker's interval before it, or so late in it that too little is left.</summary>
    /// <param name="Worker">Index of the worker.</param>
    /// <param name="Wait">The wait, and the run at its other end.</param>
    /// <param name="With">The run that has to follow and for which too little is left; null if that holds of the run alone.</param>
    public sealed record ReadyTooLate(int Worker, Waits Wait, int? With = null) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>Enough was left of the worker's interval before it, but the worker may not do that much in one day.</summary>
    /// <param name="Worker">Index of the worker.</param>
    /// <param name="Run">The worker's last run on that day.</param>
    public sealed record HadItsShare(int Worker, int Run) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>Nobody who may do it is at hand, or what is left of the interval before is too short.</summary>
    /// <param name="Worker">Index of the worker.</param>
    /// <param name="Run">The run that keeps the worker or the units until too little is left, or −1.</param>
    /// <param name="With">The run that has to follow and for which too little is left; null if that holds of the run alone.</param>
    public sealed record Closed(int Worker, int Run, int? With = null) : Reason
    {
        private protected override void Close() { }
    }

    /// <summary>Nothing known does: it could start earlier, all else left as it is.</summary>
    public sealed record Nothing : Reason
    {
        private protected override void Close() { }
    }
}
