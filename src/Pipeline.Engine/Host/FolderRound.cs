using System.Security.Cryptography;
using MediatR;
using NodaTime;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>
/// Goes once through a folder and does what is missing: plans each workflow file that has no results yet or has changed, writes
/// the results beside it, then records that it is done. In this order a stop at any moment only means doing it again.
/// </summary>
/// <param name="folder">The folder, as a full path.</param>
/// <param name="disk">The disk.</param>
/// <param name="state">What is done.</param>
/// <param name="mediator">Plans, and tells what happened.</param>
/// <param name="clock">The clock.</param>
public sealed class FolderRound(string folder, IDisk disk, IHostState state, IMediator mediator, IClock clock)
{
    private readonly Dictionary<string, Pending> pending = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Seen> seen = new(StringComparer.Ordinal);
    private HashSet<string> toldTroubles = new(StringComparer.Ordinal);
    private HashSet<string> troubles = new(StringComparer.Ordinal);

    /// <summary>Goes through the folder.</summary>
    /// <param name="cancel">Stops between and within files; what is half done is done again next time.</param>
    public async Task Run(CancellationToken cancel)
    {
        troubles = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in await WorkflowFiles().ConfigureAwait(false))
        {
            if (cancel.IsCancellationRequested)
                return;
            await Visit(file, cancel).ConfigureAwait(false);
        }

        // a trouble that goes on is told once, not in every round
        toldTroubles = troubles;
    }

    /// <summary>Removes unfinished files that a crash left behind.</summary>
    public async Task SweepLeftovers()
    {
        try
        {
            foreach (var file in Directory.Exists(folder) ? Directory.GetFiles(folder, $".*{RealDisk.UnfinishedSuffix}") : [])
            {
                if (disk.Remove(file) is { } why)
                    await Tell(why.Message).ConfigureAwait(false);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await Tell($"cannot look through {folder}: {Faults.InWords(fault)}").ConfigureAwait(false);
        }
    }

    private async Task<List<FileInfo>> WorkflowFiles()
    {
        try
        {
            var listed = new DirectoryInfo(folder);
            if (listed.Exists)
            {
                return await OnePerName(listed.EnumerateFiles()
                    .Where(file => file.Extension is ".yaml" or ".yml" && !file.Name.StartsWith('.'))
                    .OrderBy(file => file.Name, StringComparer.Ordinal)).ConfigureAwait(false);
            }

            await Tell($"the folder {folder} is not there").ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await Tell($"cannot look through {folder}: {Faults.InWords(fault)}").ConfigureAwait(false);
        }

        return [];
    }

    /// <summary>Two files that differ only in their ending would have the same results.</summary>
    private async Task<List<FileInfo>> OnePerName(IEnumerable<FileInfo> files)
    {
        var taken = new Dictionary<string, FileInfo>(StringComparer.OrdinalIgnoreCase);
        foreach (var file in files)
        {
            var stem = Path.GetFileNameWithoutExtension(file.Name);
            if (!taken.TryAdd(stem, file))
                await Tell($"{file.Name} is left out, since its results would have the names of those of {taken[stem].Name}").ConfigureAwait(false);
        }

        return [.. taken.Values];
    }

    private async Task Visit(FileInfo file, CancellationToken cancel)
    {
        try
        {
            if (SeenHash(file) is { } known && IsDone(file.Name, known))
                return;
            if (await Content(file).ConfigureAwait(false) is not { } content || IsDone(file.Name, content.Hash))
                return;
            if (!pending.TryGetValue(file.Name, out var waiting) || waiting.Hash != content.Hash)
            {
                await mediator.Publish(new FileArrived(file.Name), cancel).ConfigureAwait(false);
                using var bytes = new MemoryStream(content.Bytes, writable: false);
                var answer = await mediator.Send(new PlanFiles([new WorkflowInput.FromStream(file.Name, bytes)]), cancel).ConfigureAwait(false);
                if (cancel.IsCancellationRequested)
                    return;
                pending[file.Name] = waiting = new Pending(content.Hash, InFiles(file.Name, answer));
            }

            await Finish(file.Name, waiting).ConfigureAwait(false);
        }
        catch (HostStateException fault)
        {
            await Tell(fault.Message).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            await Tell($"cannot read {file.Name}: {Faults.InWords(fault)}").ConfigureAwait(false);
        }
    }

    /// <summary>A result that cannot be shown is a mistake of ours about this one file; the others go on.</summary>
    private static Results InFiles(string name, Answer<PlanResult> answer)
    {
        try
        {
            return Results.Of(name, answer);
        }
        catch (Exception fault)
        {
            return Results.Of(name, new Answer<PlanResult>.Broke(Faults.InWords(fault), null));
        }
    }

    private bool IsDone(string name, string hash) =>
        state.Find(folder, name) is { } entry
        && entry.ContentHash == hash
        && File.Exists(Path.Combine(folder, Results.NamesFor(name)[0]))
        && (entry.Result != HostResult.Planned || Results.NamesFor(name).All(each => File.Exists(Path.Combine(folder, each))));

    /// <summary>Writes the results and records them; what cannot be written now stays and is tried in the next round.</summary>
    private async Task Finish(string name, Pending waiting)
    {
        foreach (var (result, bytes) in waiting.Results.Files)
        {
            var path = Path.Combine(folder, result);
            if ((bytes is null ? disk.Remove(path) : disk.Write(path, bytes)) is { } why)
            {
                await Tell(why.Message).ConfigureAwait(false);
                return;
            }
        }

        state.Record(new HostEntry(folder, name, waiting.Hash, waiting.Results.Result, clock.GetCurrentInstant()));
        pending.Remove(name);
        await mediator.Publish(waiting.Results.Notice).ConfigureAwait(false);
    }

    /// <summary>The hash of the file as it was last read, if it looks the same; null if it must be read.</summary>
    private string? SeenHash(FileInfo file)
    {
        var look = Look(file);

        // a file changed within the clock's grain of the last look may have changed again unseen
        var isSettled = clock.GetCurrentInstant() - look.Written > Duration.FromSeconds(2);
        return isSettled && seen.TryGetValue(file.Name, out var before) && before with { Hash = "" } == look ? before.Hash : null;
    }

    /// <summary>A file's bytes and their hash; null if they cannot be read.</summary>
    private async Task<(string Hash, byte[] Bytes)?> Content(FileInfo file)
    {
        var look = Look(file);
        switch (disk.Read(file.FullName, SourceText.LargestBytes))
        {
            case FileRead.Whole whole:
                var bytes = whole.Bytes.ToArray();
                var hash = Convert.ToHexString(SHA256.HashData(bytes));
                seen[file.Name] = look with { Hash = hash };
                return (hash, bytes);
            case FileRead.TooLarge large:
                await Tell(SourceText.TooLarge(file.Name, large.Bytes).Message.TrimEnd('.')).ConfigureAwait(false);
                return null;
            case FileRead.Refused refused:
                await Tell(refused.Why.Message).ConfigureAwait(false);
                return null;
            default:
                return null;
        }
    }

    private static Seen Look(FileInfo file) => new(file.Length, Instant.FromDateTimeUtc(file.LastWriteTimeUtc), "");

    private async Task Tell(string trouble)
    {
        if (troubles.Add(trouble) && !toldTroubles.Contains(trouble))
            await mediator.Publish(new FolderTrouble(trouble)).ConfigureAwait(false);
    }

    private sealed record Pending(string Hash, Results Results);

    private sealed record Seen(long Length, Instant Written, string Hash);
}
