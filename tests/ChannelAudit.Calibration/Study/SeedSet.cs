namespace ChannelAudit.Calibration.Study;

/// <summary>Seeds that limits were chosen on, and seeds that only judge: no recording is in both.</summary>
public enum SeedSet
{
    /// <summary>Looked at while limits were chosen.</summary>
    Choosing,

    /// <summary>Never looked at while limits were chosen; every published rate comes from these.</summary>
    Judging,
}
