using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>The traces of whole recordings as they were stored, baseline and all.</summary>
internal sealed class WholeRow(ImmutableArray<PlateColumn> columns, float share) : IPlateRow
{
    private readonly double _least = columns.SelectMany(column => column.Subject.View.Whole.Least).Where(double.IsFinite).DefaultIfEmpty(0).Min();
    private readonly double _greatest = columns.SelectMany(column => column.Subject.View.Whole.Greatest).Where(double.IsFinite).DefaultIfEmpty(0).Max();

    public float Share => share;

    public void Draw(Picture picture, PlateColumn column, Area outer)
    {
        Trace trace = column.Subject.View.Whole;
        Panel panel = new(picture, column.Subject, outer, "Whole recording as it was stored, \u00B5V");
        double air = (_greatest - _least) * 0.1;
        ValueAxis values = panel.Upwards(_least - air, _greatest + air);
        TimeAxis times = new(trace.FromS, trace.ToS, panel.Field.Left, panel.Field.Right);
        panel.DrawLeft(values);
        panel.DrawBelow(times.Ticks(column.Subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        TraceBars.Draw(picture, panel.Field, trace, values, _ => 0);
    }
}
