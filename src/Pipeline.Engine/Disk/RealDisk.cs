namespace Pipeline.Engine;

/// <summary>The machine's disk.</summary>
public sealed class RealDisk : IDisk
{
    /// <summary>What the names of unfinished files end in; such a file left behind by a crash may be swept away.</summary>
    public const string UnfinishedSuffix = ".pipeline-unfinished";

    /// <inheritdoc/>
    public FileRead Read(string path, int largestBytes)
    {
        try
        {
            if (Directory.Exists(path))
                return Unread(path, "it is a folder", "Name the workflow files in it.");
            if (!File.Exists(path))
                return Unread(path, "there is no such file", "Check the name and the folder you are in.");
            using var handle = OpenFiles.ForReading(path);
            if (!OpenFiles.IsFile(handle) && !OpenFiles.IsHandedOver(path))
                return Unread(path, "it is a pipe or a device, not a file", "Pipe it in and give - as the file.");
            using var stream = new FileStream(handle, FileAccess.Read, bufferSize: 0);
            return ReadLimited(stream, largestBytes);
        }
        catch (UnauthorizedAccessException)
        {
            return Unread(path, "you may not read it", "Check who owns it and its permissions.");
        }
        catch (Exception fault) when (fault is IOException or ArgumentException or NotSupportedException)
        {
            return Unread(path, Faults.InWords(fault), "Check the name and the disk.");
        }
    }

    /// <summary>Reads a stream to its end, unless it holds more than the limit.</summary>
    /// <exception cref="IOException">The stream breaks.</exception>
    public static FileRead ReadLimited(Stream stream, int largestBytes)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (stream.CanSeek && stream.Length > largestBytes)
            return new FileRead.TooLarge(stream.Length);
        var bytes = new byte[stream.CanSeek ? (int)stream.Length + 1 : 64 * 1024];
        var filled = 0;
        while (true)
        {
            if (filled == bytes.Length)
                Array.Resize(ref bytes, Math.Min(bytes.Length * 2, largestBytes + 1));
            var read = stream.Read(bytes, filled, bytes.Length - filled);
            if (read == 0)
                return new FileRead.Whole(bytes.AsMemory(0, filled));
            filled += read;
            if (filled > largestBytes)
                return new FileRead.TooLarge(filled);
        }
    }

    /// <inheritdoc/>
    public Refusal? Write(string path, ReadOnlySpan<byte> bytes)
    {
        string? unfinished = null;
        try
        {
            // what a link leads to is written, and the link stays
            // (of a relative path .NET resolves a relative link from the root, so the path is made whole first)
            path = Path.GetFullPath(path);
            if (File.Exists(path))
                path = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
            var folder = Path.GetDirectoryName(path)!;
            unfinished = Path.Combine(folder, $".{Path.GetFileName(path)}.{Guid.NewGuid():N}{UnfinishedSuffix}");
            using (var stream = new FileStream(unfinished, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(path))
                File.SetUnixFileMode(unfinished, File.GetUnixFileMode(path));
            File.Move(unfinished, path, overwrite: true);
            OpenFiles.FlushFolder(folder);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            if (unfinished is not null)
                _ = Remove(unfinished);
            return Cannot("write", path, fault);
        }
    }

    /// <inheritdoc/>
    public Refusal? Remove(string path)
    {
        try
        {
            File.Delete(path);
            return null;
        }
        catch (DirectoryNotFoundException)
        {
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Cannot("remove", path, fault);
        }
    }

    /// <inheritdoc/>
    public Refusal? MakeFolder(string path)
    {
        try
        {
            Directory.CreateDirectory(path);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Cannot("make the folder", path, fault);
        }
    }

    private static FileRead.Refused Unread(string path, string why, string hint) => new(new Refusal($"cannot read {path}: {why}", hint));

    private static Refusal Cannot(string what, string path, Exception fault)
    {
        var why = fault switch
        {
            UnauthorizedAccessException => "you may not write there",
            DirectoryNotFoundException => "the folder is not there",
            _ => Faults.InWords(fault),
        };
        return new Refusal($"cannot {what} {path}: {why}", "Check the folder, its permissions and the room on the disk.");
    }
}
