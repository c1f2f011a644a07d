namespace ChannelAudit.Review;

/// <summary>Every message about the server itself.</summary>
internal static class ServerErrors
{
    /// <summary>Another program listens there.</summary>
    public static ChannelAuditException PortTaken(int port, Exception inner) => new(
        FaultKind.Usage, FormattableString.Invariant($"--port: {port} cannot be listened on"), "give another port, or leave --port out for any that is free", inner);
}
