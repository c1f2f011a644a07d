namespace ChannelAudit.Cli;

/// <summary>Writes faults as people get them: one line with the fault, one with the next step.</summary>
internal static class ErrorReport
{
    /// <summary>Writes a fault in what the user gave.</summary>
    public static void Write(TextWriter error, ChannelAuditException fault) => Write(error, fault.Message, fault.Hint);

    /// <summary>Writes that the run was interrupted.</summary>
    public static void WriteInterrupted(TextWriter error) =>
        Write(error, "interrupted", "what stood in the output folder is as it was; run the same command again, and it goes on with the rest");

    /// <summary>Writes that the program itself is at fault.</summary>
    public static void WriteBug(TextWriter error, Exception fault) =>
        Write(error, $"this is a bug in channelaudit, not in your data: {fault.GetType().Name}",
            "run the same command with --verbose and report what it prints");

    private static void Write(TextWriter error, string message, string hint) =>
        error.Write($"error: {OnOneLine(message)}\nhint: {OnOneLine(hint)}\n");

    // Messages are made for one line; this keeps the promise when the operating system's words are part of one.
    private static string OnOneLine(string text) => text.Replace('\r', ' ').Replace('\n', ' ');
}
