namespace ChannelAudit.Synthesis;

/// <summary>One of the two electrodes of a site, or the ground.</summary>
/// <param name="Site">The site's name; empty: the ground.</param>
/// <param name="IsSecond">Whether it is the one whose voltage is subtracted.</param>
public readonly record struct Electrode(string Site, bool IsSecond)
{
    /// <summary>The ground electrode that all sites share.</summary>
    public static Electrode Ground { get; } = new(string.Empty, IsSecond: false);

    /// <summary>Whether this is the ground.</summary>
    public bool IsGround => string.IsNullOrEmpty(Site);

    /// <summary>The electrode that counts positive.</summary>
    /// <param name="site">The site's name.</param>
    public static Electrode First(string site) => new(site, IsSecond: false);

    /// <summary>The electrode that is subtracted.</summary>
    /// <param name="site">The site's name.</param>
    public static Electrode Second(string site) => new(site, IsSecond: true);
}
