namespace ChannelAudit.Impedance;

/// <summary>One end of a reading: an electrode of a site, or the ground.</summary>
/// <param name="Site">The site's name; empty: the ground, which all sites share.</param>
/// <param name="IsSecond">Whether it is electrode b, whose voltage is subtracted.</param>
public readonly record struct SiteElectrode(string Site, bool IsSecond)
{
    /// <summary>The ground.</summary>
    public static SiteElectrode Ground { get; } = new(string.Empty, IsSecond: false);

    /// <summary>Whether this is the ground.</summary>
    public bool IsGround => string.IsNullOrEmpty(Site);

    /// <summary><c>a</c>, <c>b</c> or <c>ground</c>.</summary>
    public string Letter => IsGround ? "ground" : IsSecond ? "b" : "a";

    /// <summary>As in a table: <c>cheek.a</c>, or <c>ground</c>.</summary>
    public override string ToString() => IsGround ? Letter : $"{Site}.{Letter}";
}
