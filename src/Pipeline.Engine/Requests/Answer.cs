using Pipeline.Abstractions;

namespace Pipeline.Engine;

/// <summary>What became of a request.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public abstract record Answer<T>
{
    private protected abstract void Closed();

    /// <summary>What was asked for.</summary>
    public sealed record Given(T Value) : Answer<T>
    {
        private protected override void Closed() { }
    }

    /// <summary>The call or its input cannot be used; nothing was done.</summary>
    public sealed record Refused(Sequence<Refusal> Why) : Answer<T>
    {
        private protected override void Closed() { }
    }

    /// <summary>A mistake of the program itself.</summary>
    /// <param name="What">In one line.</param>
    /// <param name="Report">The file with the details, or null if none could be written.</param>
    public sealed record Broke(string What, string? Report) : Answer<T>
    {
        private protected override void Closed() { }
    }
}
