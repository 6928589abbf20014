namespace Pipeline.Engine;

/// <summary>
/// Wakes the host when something changes in a folder. It only wakes: what is to be done is found by going through the folder, so a
/// lost signal costs nothing but a few seconds.
/// </summary>
internal sealed class FolderWatch(string folder) : IDisposable
{
    /// <summary>Goes through the folder at least this often.</summary>
    private static readonly TimeSpan AtLeastEvery = TimeSpan.FromSeconds(5);

    /// <summary>An editor saves in several writes; wait until it has been quiet for this long.</summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(250);

    private readonly SemaphoreSlim changed = new(0, 1);
    private FileSystemWatcher? watcher;

    /// <summary>Waits until something has changed and it is quiet again, or for the usual time.</summary>
    public async Task Next(CancellationToken cancel)
    {
        Watch();
        if (!await changed.WaitAsync(AtLeastEvery, cancel).ConfigureAwait(false))
            return;
        for (var i = 0; i < 8 && await changed.WaitAsync(Quiet, cancel).ConfigureAwait(false); i++)
        {
            // still being written to
        }
    }

    public void Dispose()
    {
        watcher?.Dispose();
        changed.Dispose();
    }

    /// <summary>Begins to watch; begins anew if the folder has been away.</summary>
    private void Watch()
    {
        if (watcher is not null && Directory.Exists(folder))
            return;
        Stop();
        try
        {
            if (!Directory.Exists(folder))
                return;
            var made = new FileSystemWatcher(folder) { Filters = { "*.yaml", "*.yml" } };
            made.Changed += (_, _) => Wake();
            made.Created += (_, _) => Wake();
            made.Renamed += (_, _) => Wake();
            made.Deleted += (_, _) => Wake();
            made.Error += (_, _) =>
            {
                // too much at once, or the folder is gone: watch anew in the next round
                Stop();
                Wake();
            };
            made.EnableRaisingEvents = true;
            watcher = made;
            Wake();
        }
        catch (Exception fault) when (fault is IOException or ArgumentException or UnauthorizedAccessException)
        {
            // no watch to be had (the system's limit, or the folder just went): the rounds go on by time alone
            Stop();
        }
    }

    private void Stop() => Interlocked.Exchange(ref watcher, null)?.Dispose();

    private void Wake()
    {
        try
        {
            changed.Release();
        }
        catch (Exception fault) when (fault is SemaphoreFullException or ObjectDisposedException)
        {
            // already awake, or no longer listening
        }
    }
}
