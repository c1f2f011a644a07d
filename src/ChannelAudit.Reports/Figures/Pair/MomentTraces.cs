using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>A typical moment of both channels, one above the other, each at its own size: joined sites show the same waves.</summary>
internal static class MomentTraces
{
    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, PairSubject subject, Area outer)
    {
        if (subject.View.Moment is not { } moment)
        {
            new Panel(picture, subject.Note, outer, "Both channels, a typical moment", hasTimes: false).SayNothing("no contraction, no rest");
            return;
        }

        string state = PairStateLook.WordsOf(subject, moment.State);
        float line = TextMeasure.LineHeight(subject.Note);
        bool hasNames = outer.Height > 7 * line;
        string order = hasNames ? string.Empty : $"{subject.NameA} above {subject.NameB}. ";
        Panel panel = new(picture, subject.Note, outer, $"{order}A typical moment{(subject.View.IsPart ? " where joined" : string.Empty)}, {state}; each trace at its own size");
        TimeAxis times = new(moment.A.FromS, moment.A.ToS, panel.Field.Left, panel.Field.Right) { IsClock = subject.Recording.DurationS >= TimeAxis.ClockFromS };
        panel.DrawBelow(times.Ticks(subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        float half = panel.Field.Height / 2;
        DrawTrace(picture, subject, moment.A, subject.NameA, Area.Between(panel.Field.Left, panel.Field.Top, panel.Field.Right, panel.Field.Top + half), hasNames ? line : 0);
        DrawTrace(picture, subject, moment.B, subject.NameB, Area.Between(panel.Field.Left, panel.Field.Top + half, panel.Field.Right, panel.Field.Bottom), hasNames ? line : 0);
    }

    private static void DrawTrace(Picture picture, PairSubject subject, Trace trace, string name, Area half, float line)
    {
        double[] middles = [.. trace.Least.Zip(trace.Greatest, (least, greatest) => (least + greatest) / 2).Where(double.IsFinite)];
        if (middles.Length == 0)
        {
            return;
        }

        double level = middles.Average();
        double reach = middles.Max(value => Math.Abs(value - level));
        Area field = Area.Between(half.Left, half.Top + line + 2, half.Right, half.Bottom - 2);
        ValueAxis axis = new(-reach, reach, field.Bottom, field.Top);
        string unit = reach > 0 ? $", \u00B1{Wording.Quantities.Short(reach)} {Unit(subject)}".TrimEnd() : string.Empty;
        if (line > 0)
        {
            picture.Text(TextMeasure.Fit(name + unit, subject.Note with { Bold = true, Color = Inks.Ink }, half.Width - 8), subject.Note with { Bold = true, Color = Inks.Ink }, half.Left + 4, half.Top + 1);
        }

        TraceBars.Draw(picture, field, trace, axis, _ => level);
    }

    private static string Unit(PairSubject subject) =>
        subject.Recording.Channels.Any(channel => string.Equals(channel.Name, subject.Result.ChannelA, StringComparison.Ordinal) && channel.View?.IsMicrovolts == false)
            ? string.Empty
            : Wording.Quantities.Unit("uV");
}
