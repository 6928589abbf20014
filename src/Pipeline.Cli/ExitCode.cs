namespace Pipeline.Cli;

/// <summary>What the command ends with.</summary>
internal static class ExitCode
{
    /// <summary>Nothing to complain about.</summary>
    public const int Fine = 0;

    /// <summary>Findings of level error.</summary>
    public const int Errors = 1;

    /// <summary>The call or the input cannot be used: a word that is not known, a file that cannot be opened or is not text.</summary>
    public const int Unusable = 2;

    /// <summary>No plan satisfies the constraints, or the plan misses a due time.</summary>
    public const int NoPlan = 3;

    /// <summary>A mistake of the program itself; after sysexits.h, EX_SOFTWARE.</summary>
    public const int Broke = 70;

    /// <summary>Stopped by Ctrl-C before there was anything to show: 128 and the number of SIGINT, as shells have it.</summary>
    public const int Stopped = 130;
}
