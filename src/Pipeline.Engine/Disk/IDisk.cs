namespace Pipeline.Engine;

/// <summary>Why a call or its input cannot be used, and what to do about it.</summary>
/// <param name="Message">A sentence without its full stop: <c>cannot read crew.yaml: there is no such file</c>.</param>
/// <param name="Hint">What to do, as a sentence.</param>
public sealed record Refusal(string Message, string Hint);

/// <summary>What reading a file gave.</summary>
public abstract record FileRead
{
    private protected abstract void Closed();

    /// <summary>All its bytes.</summary>
    public sealed record Whole(ReadOnlyMemory<byte> Bytes) : FileRead
    {
        private protected override void Closed() { }
    }

    /// <summary>It is larger than allowed; nothing of it was kept.</summary>
    /// <param name="Bytes">How large, or more than the limit if it has no end.</param>
    public sealed record TooLarge(long Bytes) : FileRead
    {
        private protected override void Closed() { }
    }

    /// <summary>It cannot be read.</summary>
    public sealed record Refused(Refusal Why) : FileRead
    {
        private protected override void Closed() { }
    }
}

/// <summary>The disk as the engine uses it: read whole with a limit, write whole or not at all. Never throws on what a disk does.</summary>
public interface IDisk
{
    /// <summary>Reads a file whole, unless it is larger than the limit.</summary>
    FileRead Read(string path, int largestBytes);

    /// <summary>
    /// Writes a file whole or not at all: a reader sees the old bytes or the new ones, also after a loss of power.
    /// </summary>
    /// <returns>Null if it is on the disk, or why it is not.</returns>
    Refusal? Write(string path, ReadOnlySpan<byte> bytes);

    /// <summary>Removes a file; one that is not there is no mistake.</summary>
    /// <returns>Null if it is gone, or why it is not.</returns>
    Refusal? Remove(string path);

    /// <summary>Makes a folder and those above it.</summary>
    /// <returns>Null if it is there, or why it is not.</returns>
    Refusal? MakeFolder(string path);
}
