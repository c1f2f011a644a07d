namespace ChannelAudit.Reports.Figures.Drawing;

/// <summary>The pattern of a line.</summary>
internal enum Dash
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dashed,

    /// <summary>Dots.</summary>
    Dotted,
}
