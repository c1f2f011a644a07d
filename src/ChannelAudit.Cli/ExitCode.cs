namespace ChannelAudit.Cli;

/// <summary>What the program's exit code says.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Done, and something is as bad as <c>--fail-on</c> names, or a comparison found a difference.</summary>
    public const int Reached = 1;

    /// <summary>Wrong usage, setup, criteria or events.</summary>
    public const int Usage = 2;

    /// <summary>A recording could not be read; the others were audited.</summary>
    public const int Unread = 3;

    /// <summary>A bug of ours.</summary>
    public const int Bug = 70;

    /// <summary>Interrupted from outside.</summary>
    public const int Interrupted = 130;

    /// <summary>The code for a fault in what the user gave.</summary>
    public static int Of(FaultKind kind) => kind == FaultKind.Recording ? Unread : Usage;
}
