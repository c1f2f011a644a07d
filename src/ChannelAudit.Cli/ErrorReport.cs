using ChannelAudit.Text;

namespace ChannelAudit.Cli;

/// <summary>Writes faults as people get them: one line with the fault, one with the next step.</summary>
internal static class ErrorReport
{
    /// <summary>Writes a fault in what the user gave.</summary>
    public static void Write(TextWriter error, ChannelAuditException fault) => Write(error, fault.Message, fault.Hint);

    /// <summary>Writes that the run was interrupted.</summary>
    /// <param name="error">Standard error.</param>
    /// <param name="command">The name of the command.</param>
    public static void WriteInterrupted(TextWriter error, string command) => Write(error, "interrupted", AfterInterrupt(command));

    /// <summary>Writes that the program itself is at fault.</summary>
    public static void WriteBug(TextWriter error, Exception fault) =>
        Write(error, $"this is a bug in channelaudit, not in your data: {fault.GetType().Name}",
            "run the same command with --verbose and report what it prints");

    private static string AfterInterrupt(string command) => command switch
    {
        "screen" => "what stood in the output folder is as it was; run the same command again, and it goes on with the rest",
        "decide" => "a decision that was kept stays: channelaudit decide DIR lists them; look there before you decide again",
        "demo" => "delete the folder that was begun, and run the same command again",
        _ => "nothing was left half done; run the same command again",
    };

    // Messages are made for one line; this keeps the promise whatever names, and whatever words of the operating system, are part of one.
    private static void Write(TextWriter error, string message, string hint) => error.Write($"error: {OneLine.Whole(message)}\nhint: {OneLine.Whole(hint)}\n");
}
