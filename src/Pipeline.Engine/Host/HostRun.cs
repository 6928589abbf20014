using System.Security.Cryptography;
using System.Text;
using MediatR;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Pipeline.Engine;

/// <summary>Runs the host until it is told to stop.</summary>
public static class HostRun
{
    // a file that another process holds: EWOULDBLOCK, and ERROR_SHARING_VIOLATION
    private const int HeldOnLinux = 11;
    private const int HeldOnMac = 35;
    private const int HeldOnWindows = unchecked((int)0x80070020);

    /// <summary>Watches a folder until the program gets SIGTERM, SIGINT or the token; then stops within seconds.</summary>
    /// <param name="folder">The folder; it must be there at the start.</param>
    /// <param name="stateFolder">Where the state's file lies; made when needed.</param>
    /// <param name="parts">What the engine is given of the world.</param>
    /// <param name="cancel">Stops it too.</param>
    /// <returns>Null if it was told to stop, or why it could not start.</returns>
    public static async Task<Refusal?> Run(string folder, string stateFolder, EngineParts parts, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(parts);
        folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (!Directory.Exists(folder))
            return new Refusal($"cannot watch {folder}: there is no such folder", "Make the folder first, or check its name.");
        if (parts.Disk.MakeFolder(stateFolder) is { } why)
            return why;
        var lockFile = Path.Combine(stateFolder, $"host-{Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(folder)))[..16]}.lock");
        using var watching = TakeLock(lockFile, out var refusal);
        if (watching is null)
            return refusal ?? new Refusal($"another pipeline host already watches {folder}", "Stop that one first, or leave it to its work.");

        SqliteHostState state;
        var log = new FolderLog(parts.Log);
        try
        {
            state = SqliteHostState.Open(Path.Combine(stateFolder, "state.db"), out var putAside);
            if (putAside is not null)
                parts.Log.Warning("the host's state was damaged and has been put aside as {PutAside:l}; everything is looked at anew", putAside);
        }
        catch (HostStateException fault)
        {
            return new Refusal(fault.Message, $"Check {stateFolder}, its permissions and the room on the disk.");
        }

        var mediator = Composition.Engine(parts, listen =>
        {
            listen.Listens<FileArrived>(log);
            listen.Listens<PlanWritten>(log);
            listen.Listens<FolderTrouble>(log);
        });
        foreach (var finding in parts.Plugins.Findings)
            parts.Log.Error("{Finding:l}", finding.Message);
        parts.Log.Information("watching {Folder:l}", Faults.OnOneLine(folder));
        await RunHost(folder, new FolderRound(folder, parts.Disk, state, mediator, parts.Clock), mediator, cancel).ConfigureAwait(false);
        parts.Log.Information("stopped");
        return null;
    }

    private static async Task RunHost(string folder, FolderRound round, IMediator mediator, CancellationToken cancel)
    {
        // without defaults: no settings file of the folder we happen to stand in has a say
        var builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(10));
        builder.Services.Configure<ConsoleLifetimeOptions>(options => options.SuppressStatusMessages = true);
        builder.Services.AddHostedService(_ => new FolderHost(folder, round, mediator));
        using var host = builder.Build();
        await host.RunAsync(cancel).ConfigureAwait(false);
    }

    /// <summary>Held while the program lives, however it ends; the system gives it back.</summary>
    private static FileStream? TakeLock(string file, out Refusal? refusal)
    {
        refusal = null;
        try
        {
            return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException)
        {
            refusal = new Refusal($"cannot write {file}: you may not write there", "Check who owns the folder and its permissions.");
            return null;
        }
        catch (IOException fault) when (fault.HResult is HeldOnLinux or HeldOnMac or HeldOnWindows)
        {
            return null;
        }
        catch (IOException fault)
        {
            refusal = new Refusal($"cannot write {file}: {Faults.InWords(fault)}", "Check the folder and the room on the disk.");
            return null;
        }
    }
}
