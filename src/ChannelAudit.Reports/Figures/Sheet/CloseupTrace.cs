using System.Globalization;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The worst trial enlarged: its window between two lines, and where samples are at a rail, flat or missing.</summary>
internal static class CloseupTrace
{
    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, SheetSubject subject, Area outer)
    {
        if (subject.View.Closeup is not { } closeup)
        {
            new Panel(picture, subject, outer, "One trial enlarged", hasTimes: false).SayNothing("no trial");
            return;
        }

        // One level for all of it, so that a drift inside the trial stays to be seen.
        double level = Baseline.At(subject.View, (closeup.Trace.FromS + closeup.Trace.ToS) / 2);
        TraceRange range = TraceRange.Of(closeup.Trace, _ => level);
        Panel panel = new(picture, subject, outer, Heading(subject, closeup) + WholeTrace.Of(subject));
        TimeAxis times = new(closeup.Trace.FromS, closeup.Trace.ToS, panel.Field.Left, panel.Field.Right) { IsClock = WholeTrace.HasClock(subject.View) };
        IReadOnlyList<(float, float, string, Grade)> marks = MarksIn(subject, closeup, times);
        Area field = Area.Between(panel.Field.Left, panel.Field.Top + Marks.LaneHeight(subject), panel.Field.Right, panel.Field.Bottom);
        ValueAxis values = new(-range.Reach, range.Reach, field.Bottom - 1, field.Top);
        panel.DrawLeft(values);
        panel.DrawBelow(times.Ticks(subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        Marks.Draw(picture, subject, panel.Field, marks);
        WholeTrace.DrawGaps(picture, field, closeup.Trace);
        TraceBars.Draw(picture, field, closeup.Trace, values, _ => level);
        foreach (double edge in new[] { closeup.WindowFromS, closeup.WindowToS }.Where(edge => edge > closeup.Trace.FromS && edge < closeup.Trace.ToS))
        {
            picture.Line(times.X(edge), panel.Field.Top, times.X(edge), panel.Field.Bottom, Inks.Muted, 2, Dash.Dashed);
        }
    }

    // Where samples of the window are known to be at fault, exactly those; else the stretch of the finding. What lies around the window was not judged with it.
    private static IReadOnlyList<(float From, float To, string Reason, Grade Grade)> MarksIn(SheetSubject subject, Closeup closeup, TimeAxis times)
    {
        FaultMark[] inside = [.. closeup.Marks.Where(mark => mark.FromS < closeup.WindowToS && mark.ToS > closeup.WindowFromS)];
        return inside.Length > 0
            ? [.. inside.Select(mark => (
                times.X(Math.Max(mark.FromS, closeup.WindowFromS)), times.X(Math.Min(mark.ToS, closeup.WindowToS)), mark.Reason, Grade.Reject))]
            : [.. subject.Channel.Cells.First(one => one.Trial == closeup.Trial).Findings
                .Where(finding => finding.Grade > Grade.Pass)
                .Select(finding => (times.X(finding.FromS), times.X(finding.ToS), finding.Reason, finding.Grade))];
    }

    private static string Heading(SheetSubject subject, Closeup closeup)
    {
        CellResult cell = subject.Channel.Cells.First(one => one.Trial == closeup.Trial);
        string number = closeup.Trial.ToString(CultureInfo.InvariantCulture);
        return cell.Verdict == Grade.Pass
            ? $"Trial {number}, the strongest: {VerdictWords.Code(cell.Verdict)}"
            : $"Trial {number}, the worst: {VerdictWords.Code(cell.Verdict)}, {FigureText.Names(cell.Reasons)}";
    }
}
