using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Sheet;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>The baselines of whole recordings.</summary>
internal sealed class BaselineRow(ImmutableArray<PlateColumn> columns, float share) : IPlateRow
{
    private readonly PanelFrame _frame = new(
        "Baseline, one level a second, \u00B5V",
        columns.Min(column => BaselinePlot.Range(column.Subject).Low),
        columns.Max(column => BaselinePlot.Range(column.Subject).High));

    public float Share => share;

    public void Draw(Picture picture, PlateColumn column, Area outer) => BaselinePlot.Draw(picture, column.Subject, outer, _frame);
}
