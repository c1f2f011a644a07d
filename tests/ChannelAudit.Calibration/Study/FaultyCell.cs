namespace ChannelAudit.Calibration.Study;

/// <summary>A trial of a site that a fault meets.</summary>
/// <param name="Site">The site.</param>
/// <param name="Trial">The trial's number from 1.</param>
public readonly record struct FaultyCell(string Site, int Trial);
