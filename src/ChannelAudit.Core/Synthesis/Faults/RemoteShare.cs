namespace ChannelAudit.Synthesis.Faults;

/// <summary>How a site sees a remote source.</summary>
/// <param name="Site">The site.</param>
/// <param name="Potential">Factor of the mean potential of both electrodes; it shows only where gel joins sites, or a site and the ground.</param>
/// <param name="Across">Factor of the voltage between the electrodes, which the channel shows.</param>
public sealed record RemoteShare(string Site, double Potential, double Across);
