namespace ChannelAudit.Review;

/// <summary>Brings tables and pages up to the last decision.</summary>
internal static class AuditRefresh
{
    /// <summary>Until the shared update is there, screen and decide do it.</summary>
    public static bool Run(string folder, string version, CancellationToken cancel) => false;
}
