namespace ChannelAudit.Reports.Reviewing;

/// <summary>How large a cell's picture is, and for which page.</summary>
/// <param name="Width">Width in pixels.</param>
/// <param name="Height">Height in pixels.</param>
/// <param name="Scale">Pixels of the screen to one of the page: 1 or 2.</param>
/// <param name="IsDark">Whether the page is dark.</param>
/// <param name="IsBehind">Whether the cell's own trace and its spectrum are shown behind the high-pass of scoring.</param>
public readonly record struct CellLook(int Width, int Height, int Scale, bool IsDark, bool IsBehind = false)
{
    /// <summary>The nearest look that can be drawn.</summary>
    public CellLook Clamped() => this with { Width = Math.Clamp(Width, 480, 3200), Height = Math.Clamp(Height, 320, 2400), Scale = Math.Clamp(Scale, 1, 2) };
}
