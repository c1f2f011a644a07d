using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The amplitude of every trial with its verdict's shape, and the resting level as a line.</summary>
internal static class AmplitudePlot
{
    private static readonly ImmutableArray<int> Steps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 10_000, 100_000, int.MaxValue];

    /// <summary>Draws the panel.</summary>
    public static void Draw(Picture picture, SheetSubject subject, Area outer)
    {
        ImmutableArray<(Trial Trial, CellResult Cell, double? Amplitude)> trials =
            [.. subject.Recording.Trials.Zip(subject.Channel.Cells, (trial, cell) => (trial, cell, cell.Measures.ValueOf("emg_rms")))];
        double[] known = [.. trials.Select(one => one.Amplitude).OfType<double>().Where(value => value > 0)];
        if (known.Length == 0)
        {
            new Panel(picture, subject, outer, "Amplitude by trial", hasTimes: false).SayNothing(trials.IsEmpty ? "no trial" : "not known for any trial");
            return;
        }

        string rest = subject.View.RestRms is { } level ? $"; line: at rest, {subject.With(level)}" : string.Empty;
        Panel panel = new(picture, subject, outer, $"Amplitude by trial number{WholeTrace.Of(subject)} rms without mains; striped: rest, framed: task{rest}");
        double low = Math.Min(known.Min(), subject.View.RestRms is { } least and > 0 ? least : double.MaxValue);
        float radius = Math.Clamp(panel.Field.Width / trials.Length / 2.5f, 3, subject.Scale.Shape / 2.2f);
        ValueAxis up = new(low / 1.3, known.Max() * 1.3, panel.Field.Bottom - radius - 2, panel.Field.Top + radius + 2, isLog: true);
        ValueAxis across = panel.Rightwards(0.5, trials.Length + 0.5);
        DrawRoles(picture, panel, across, trials);
        panel.DrawLeft(up);
        panel.DrawBelow(Numbers(subject, across, trials));
        if (subject.View.RestRms is { } restRms and > 0)
        {
            picture.Line(panel.Field.Left, up.At(restRms), panel.Field.Right, up.At(restRms), Inks.PassLine, 2, Dash.Dashed);
        }

        for (int i = 0; i < trials.Length; i++)
        {
            float y = trials[i].Amplitude is { } value and > 0 ? up.At(value) : panel.Field.Bottom - radius - 2;
            VerdictShape.Draw(
                picture, Area.Around(across.At(i + 1), y, 2 * radius, 2 * radius), VerdictLooks.Of(trials[i].Cell), !trials[i].Cell.NotAssessed.IsEmpty);
        }
    }

    // All numbers where there is room, else round ones.
    private static IEnumerable<(float X, string Text)> Numbers(
        SheetSubject subject, ValueAxis across, ImmutableArray<(Trial Trial, CellResult Cell, double? Amplitude)> trials)
    {
        double room = TextMeasure.Width(trials[^1].Trial.Number.Plain(), subject.Note) + 12;
        double apart = trials.Length > 1 ? across.At(2) - across.At(1) : room;
        int step = Steps.First(candidate => candidate * apart >= room || candidate >= trials.Length);
        return trials
            .Select((one, i) => (X: across.At(i + 1), one.Trial.Number))
            .Where(tick => tick.Number % step == 0)
            .Select(tick => (tick.X, tick.Number.Plain()));
    }

    private static void DrawRoles(Picture picture, Panel panel, ValueAxis across, ImmutableArray<(Trial Trial, CellResult Cell, double? Amplitude)> trials)
    {
        for (int i = 0; i < trials.Length; i++)
        {
            Area box = Area.Between(across.At(i + 0.55), panel.Field.Top, across.At(i + 1.45), panel.Field.Bottom);
            if (trials[i].Trial.Role == TrialRole.Rest)
            {
                picture.Hatch(box, Inks.Grid, 8, 2);
            }
            else if (trials[i].Trial.Role == TrialRole.Task)
            {
                picture.Outline(box, Inks.Muted, 1);
            }
        }
    }
}
