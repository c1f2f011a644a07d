using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Figures.Looks;

/// <summary>How time looks of which nothing is stored: thin upright lines, the same in every figure. Slanted stripes mean questionable.</summary>
internal static class GapLook
{
    private const float Spacing = 6;

    /// <summary>Draws it over what is there.</summary>
    public static void Draw(Picture picture, Area box) => picture.Uprights(box, Inks.OpenLine, Spacing);
}
