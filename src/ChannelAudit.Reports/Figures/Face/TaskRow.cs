using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>One site's row: shape, name and why; the trace of its task; what came of it.</summary>
internal static class TaskRow
{
    private const float Shape = 44;
    private const float NameWidth = 250;
    private const float ValueWidth = 192;
    private const float RoomForThree = 92;

    /// <summary>Where the trace begins, from the left of a row.</summary>
    public const float TraceLeft = Shape + NameWidth + (2 * PilotLook.Gap);

    /// <summary>Where the answer begins, from the right of a row.</summary>
    public const float AnswerFromRight = ValueWidth;

    /// <summary>Room of the trace in a row.</summary>
    public static Area TraceOf(Area row) => Area.Between(row.Left + TraceLeft, row.Top + 4, row.Right - ValueWidth - PilotLook.Gap, row.Bottom - 4);

    /// <summary>Draws the row.</summary>
    public static void Draw(Picture picture, RecordingResult recording, PilotSite site, Area row)
    {
        SiteLook.Draw(picture, Area.Around(row.Left + (Shape / 2), row.CentreY, Shape, Shape), site);
        TwoLines(picture, (PlainText.Of(site.Name), PilotLook.Name), (SiteLook.Words(recording, site), PilotLook.Words), row.Left + Shape + PilotLook.Gap, NameWidth, row);
        DrawTrace(picture, site, TraceOf(row).Snapped());
        TwoLines(picture, (Answer(site), PilotLook.Value), (AnswerMore(site), PilotLook.Words), row.Right - ValueWidth, ValueWidth, row);
    }

    private static void DrawTrace(Picture picture, PilotSite site, Area field)
    {
        picture.Fill(field, Inks.Ribbon);
        if (site.Trace is not { } traced)
        {
            string none = TextMeasure.Fit(NoTrace(site), PilotLook.Note, field.Width - 16);
            picture.TextAround(none, PilotLook.Note, field.CentreX, field.CentreY);
            return;
        }

        Trace trace = traced.Trace;
        float X(double seconds) => field.Left + (float)(field.Width * Math.Clamp((seconds - trace.FromS) / (trace.ToS - trace.FromS), 0, 1));
        picture.Fill(Area.Between(X(traced.FromS), field.Top, X(traced.ToS), field.Bottom), Inks.Grid);
        TraceRange range = TraceRange.Of(trace, _ => 0);
        TraceBars.Draw(picture, field, trace, new ValueAxis(-range.Reach, range.Reach, field.Bottom - 1, field.Top), _ => 0);
        foreach (float edge in new[] { X(traced.FromS), X(traced.ToS) })
        {
            picture.Line(edge, field.Top, edge, field.Bottom, Inks.Muted, 2, Dash.Dashed);
        }
    }

    private static string NoTrace(PilotSite site) => site.Task switch
    {
        null => site.Setup is null ? "no setup, no task" : "no task named",
        { Times: 0 } => "not recorded",
        _ => "nothing stored",
    };

    private static string Answer(PilotSite site) => site.Task switch
    {
        null or { Times: 0 } => string.Empty,
        { Decibels: { } decibels } => SiteWords.Decibels(decibels),
        _ => "not known",
    };

    private static string AnswerMore(PilotSite site) => site.Task switch
    {
        { AnswersMost: false, Strongest: { } other } => PlainText.Of($"{other} answers more"),
        { WhyNot: { } why, Times: > 0 } => PlainText.Of(why),
        { ContractionUv: { } uv } when site.RestUv is { } rest => string.Create(CultureInfo.InvariantCulture, $"{rest:G2} \u2192 {Level(uv)} \u00B5V"),
        _ => string.Empty,
    };

    // Two digits, but none with an exponent.
    private static string Level(double microvolts) => microvolts >= 100
        ? microvolts.ToString("0", CultureInfo.InvariantCulture)
        : microvolts.ToString("G2", CultureInfo.InvariantCulture);

    private static void TwoLines(Picture picture, (string Text, TextStyle Style) first, (string Text, TextStyle Style) second, float left, float room, Area row)
    {
        ImmutableArray<string> below = TextMeasure.Wrap(second.Text, second.Style, room, row.Height >= RoomForThree ? 2 : 1);
        float height = TextMeasure.LineHeight(first.Style) + (below.Length * TextMeasure.LineHeight(second.Style));
        float top = MathF.Round(row.CentreY - (height / 2));
        top = picture.Text(TextMeasure.Fit(first.Text, first.Style, room), first.Style, left, top).Bottom;
        foreach (string line in below)
        {
            top = picture.Text(line, second.Style, left, top).Bottom;
        }
    }
}
