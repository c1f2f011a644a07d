using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The whole recording on the true time axis, around its baseline, with faults marked and trials below.</summary>
internal static class WholeTrace
{
    private const float TrialStrip = 7;

    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, SheetSubject subject, Area outer)
    {
        Trace trace = subject.View.Whole;
        double Level(int column) => Baseline.At(subject.View, trace.TimeOf(column));
        TraceRange range = TraceRange.Of(trace, Level);
        string cut = range.IsCut ? $"; peaks up to {subject.With(range.Largest)} are cut off here" : string.Empty;
        ImmutableArray<Finding> findings = Shown(subject);
        string letters = Marks.Key(findings.Select(finding => finding.Reason));
        Panel panel = new(picture, subject, outer, $"Whole recording{Of(subject)}, baseline taken out (it is below){cut}{letters}");

        TimeAxis times = new(trace.FromS, trace.ToS, panel.Field.Left, panel.Field.Right);
        Area field = Area.Between(panel.Field.Left, panel.Field.Top + Marks.LaneHeight(subject), panel.Field.Right, panel.Field.Bottom - TrialStrip - 2);
        ValueAxis values = new(-range.Reach, range.Reach, field.Bottom - 1, field.Top);
        panel.DrawLeft(values);
        panel.DrawBelow(times.Ticks(subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        Marks.Draw(
            picture, subject, panel.Field, [.. findings.Select(finding => (times.X(finding.FromS), times.X(finding.ToS), finding.Reason, finding.Grade))]);
        DrawGaps(picture, field, trace);
        TraceBars.Draw(picture, field, trace, values, Level);
        DrawTrials(picture, subject, times, panel.Field);
    }

    /// <summary>Whether its times are those of a clock; an enlarged part of it has the same.</summary>
    internal static bool HasClock(ChannelView view) => view.Whole.ToS - view.Whole.FromS >= TimeAxis.ClockFromS;

    /// <summary>The unit behind a heading.</summary>
    internal static string Of(SheetSubject subject) => subject.Unit.Length > 0 ? $", {subject.Unit}" : ", raw codes";

    // Where a finding of the whole recording may be good in between, the trials that show it are marked instead.
    private static ImmutableArray<Finding> Shown(SheetSubject subject) =>
    [
        .. subject.Channel.Findings
            .Where(finding => !ScatteredFault.Is(subject.Recording, subject.Channel, finding) || ScatteredFault.TrialsOf(subject.Channel, finding).IsEmpty)
            .Concat(subject.Channel.Cells.SelectMany(cell => cell.Findings))
            .Where(finding => finding.Grade > Grade.Pass && !FigureText.IsShareOfTrials(finding)),
    ];

    /// <summary>Upright lines where nothing is stored: it must not look like a quiet signal.</summary>
    internal static void DrawGaps(Picture picture, Area field, Trace trace)
    {
        for (int from = 0; from < trace.Columns; from++)
        {
            int to = from;
            while (to < trace.Columns && double.IsNaN(trace.Least[to]))
            {
                to++;
            }

            if (to > from)
            {
                float column = field.Width / trace.Columns;
                GapLook.Draw(picture, Area.Between(field.Left + (from * column), field.Top, field.Left + (to * column), field.Bottom));
                from = to;
            }
        }
    }

    // As in the amplitudes: rest is striped, a task framed; the trial shown enlarged has a bar below.
    private static void DrawTrials(Picture picture, SheetSubject subject, TimeAxis times, Area field)
    {
        foreach (Trial trial in subject.Recording.Trials)
        {
            float left = times.X((double)trial.WindowFromS);
            Area block = Area.Between(left, field.Bottom - TrialStrip, Math.Max(left + 2, times.X((double)trial.WindowToS)), field.Bottom);
            picture.Fill(block, trial.Role == TrialRole.Scored ? Inks.PassLine : Inks.Paper);
            if (trial.Role == TrialRole.Rest)
            {
                picture.Hatch(block, Inks.PassLine, 5, 2);
            }

            if (trial.Role == TrialRole.Task)
            {
                picture.Outline(block, Inks.PassLine, 1.5f);
            }
        }

        if (subject.View.Closeup is { } closeup)
        {
            float left = times.X(closeup.WindowFromS);
            picture.Fill(Area.Between(left, field.Bottom, Math.Max(left + 4, times.X(closeup.WindowToS)), field.Bottom + 4), Inks.Ink);
        }
    }
}
