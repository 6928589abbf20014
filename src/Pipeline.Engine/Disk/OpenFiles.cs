using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Pipeline.Engine;

/// <summary>What .NET cannot do with files: open a pipe without waiting for its other end, and put a rename on the disk.</summary>
internal static class OpenFiles
{
    private const int ReadOnly = 0;

    // open(2): the flags' values differ between kernels
    private static int NonBlocking => OperatingSystem.IsMacOS() ? 0x4 : 0x800;

    private static int CloseOnExec => OperatingSystem.IsMacOS() ? 0x1000000 : 0x80000;

    private static bool IsUnix => OperatingSystem.IsLinux() || OperatingSystem.IsMacOS();

    /// <summary>Opens for reading; a named pipe that nobody writes to does not hold us up.</summary>
    public static SafeFileHandle ForReading(string path)
    {
        if (IsUnix && !IsHandedOver(path))
        {
            var handle = new SafeFileHandle(Open(path, ReadOnly | NonBlocking | CloseOnExec), ownsHandle: true);
            if (!handle.IsInvalid)
                return handle;
            handle.Dispose();
        }

        // the ordinary way also says in its exception what is wrong
        return File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
    }

    /// <summary>True for what has a length and can be read from its start: a file, not a pipe, socket or terminal.</summary>
    public static bool IsFile(SafeFileHandle handle)
    {
        try
        {
            _ = RandomAccess.GetLength(handle);
            return true;
        }
        catch (NotSupportedException)
        {
            return false;
        }
    }

    /// <summary>True for a file descriptor that a shell handed over, as in <c>check &lt;(command)</c>.</summary>
    public static bool IsHandedOver(string path) =>
        IsUnix && (path is "/dev/stdin" || path.StartsWith("/dev/fd/", StringComparison.Ordinal) || path.StartsWith("/proc/self/fd/", StringComparison.Ordinal));

    /// <summary>Puts the names in a folder on the disk, so that a rename outlives a loss of power. Does what the system allows.</summary>
    public static void FlushFolder(string folder)
    {
        if (!IsUnix)
            return;
        using var handle = new SafeFileHandle(Open(folder, ReadOnly | CloseOnExec), ownsHandle: true);
        if (!handle.IsInvalid)
            _ = Sync(handle);
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(SafeFileHandle handle);
}
