using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>One row of panels, a panel a column, all in one scale; a new view of the gallery is a new row.</summary>
internal interface IPlateRow
{
    /// <summary>How much of the height it takes, against the other rows.</summary>
    float Share { get; }

    /// <summary>Draws the panel of one column.</summary>
    void Draw(Picture picture, PlateColumn column, Area outer);
}
