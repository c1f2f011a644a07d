using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>The correlation of two channels second by second, each with the mark of what the sites did, and the limit at rest.</summary>
internal static class CorrelationPlot
{
    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, PairSubject subject, Area outer)
    {
        Panel panel = new(picture, subject.Note, outer, "Correlation over time, 30 to 250 Hz without mains");
        DrawKey(picture, subject, outer);
        ValueAxis up = panel.UpwardsBelowHeading(-1.05, 1);
        TimeAxis times = new(0, Math.Max(subject.Recording.DurationS, 1), panel.Field.Left, panel.Field.Right);
        panel.DrawLeft(up);
        panel.DrawBelow(times.Ticks(subject.Note).Select(tick => (times.X(tick.Seconds), tick.Text)));
        if (subject.View.IsPart)
        {
            (double fromS, double toS) = subject.View.Stretch;
            Area part = Area.Between(times.X(fromS), panel.Field.Top, times.X(toS), panel.Field.Bottom);
            picture.Fill(part, subject.View.Grade == Verdicts.Grade.Reject ? Inks.RejectTint : Inks.QuestionableFill);
        }

        picture.Line(panel.Field.Left, up.At(0), panel.Field.Right, up.At(0), Inks.Muted, 1);
        foreach (double limit in Limits(subject))
        {
            picture.Line(panel.Field.Left, up.At(limit), panel.Field.Right, up.At(limit), Inks.RejectLine, 1.5f, Dash.Dashed);
        }

        float size = Math.Clamp(panel.Field.Width / Math.Max(1, subject.View.Seconds.Length) * 2, 4, Math.Max(6, 9 * subject.Scale.Unit));
        foreach (IGrouping<PairState, PairSecond> seconds in subject.View.Seconds.Where(second => float.IsFinite(second.Rho)).GroupBy(second => second.State).OrderBy(group => group.Key))
        {
            PairStateLook.Marks(picture, seconds.Key, [.. seconds.Select(second => new Pixel(times.X(second.AtS), up.At(second.Rho)))], size);
        }
    }

    private static IEnumerable<double> Limits(PairSubject subject) => subject.View.Limits
        .Where(limit => limit.Grade == Verdicts.Grade.Reject && string.Equals(limit.Measure, "rho_rest", StringComparison.Ordinal))
        .SelectMany(limit => new[] { limit.Value, -limit.Value });

    // To the right of the heading, as far as there is room.
    private static void DrawKey(Picture picture, PairSubject subject, Area outer)
    {
        float size = Math.Max(9, 11 * subject.Scale.Unit);
        float line = TextMeasure.LineHeight(subject.Note);
        float left = picture.Labels[^1].Area.Right + (3 * size);
        ImmutableArray<PairState> present =
            [.. subject.View.Seconds.Select(second => second.State).Distinct().Order()];
        foreach (PairState state in present)
        {
            string words = PairStateLook.WordsOf(subject, state);
            if (left + size + 6 + TextMeasure.Width(words, subject.Note) > outer.Right)
            {
                return;
            }

            PairStateLook.Marks(picture, state, [new Pixel(left + (size / 2), outer.Top + (line / 2))], size);
            left = picture.Text(words, subject.Note, left + size + 6, outer.Top).Right + (2 * size);
        }

        string limits = Limits(subject).FirstOrDefault() is > 0 and double limit ? $"dashed: \u00B1{Quantities.Short(limit)}, limit for rest only" : string.Empty;
        if (left + TextMeasure.Width(limits, subject.Note) <= outer.Right)
        {
            picture.Text(limits, subject.Note, left, outer.Top);
        }
    }
}
