using Pipeline.Engine;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline host</c>.</summary>
internal static class Hosting
{
    public static async Task<int> Run(Room room, string folder, CancellationToken cancel)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        return await HostRun.Run(folder, ThisMachine.StateFolder, parts, cancel).ConfigureAwait(false) is { } refusal
            ? Complaint.Of(refusal)
            : ExitCode.Fine;
    }
}
