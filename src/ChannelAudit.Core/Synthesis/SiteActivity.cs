namespace ChannelAudit.Synthesis;

/// <summary>How active the muscle under a site is.</summary>
/// <param name="Site">The site's name.</param>
/// <param name="RmsUv">The muscle's amplitude between the two electrodes in µV rms, noise not counted.</param>
public sealed record SiteActivity(string Site, double RmsUv);
