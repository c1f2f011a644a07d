using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>The spectra of whole recordings.</summary>
internal sealed class SpectrumRow(ImmutableArray<PlateColumn> columns, float share) : IPlateRow
{
    private readonly PanelFrame _frame = new(
        "Spectrum, \u00B5V/\u221AHz; white: band of the muscle; dots: mains",
        columns.Min(column => SpectrumPlot.Range(column.Subject).Lowest),
        columns.Max(column => SpectrumPlot.Range(column.Subject).Highest));

    public float Share => share;

    public void Draw(Picture picture, PlateColumn column, Area outer) => SpectrumPlot.Draw(picture, column.Subject, outer, _frame);
}
