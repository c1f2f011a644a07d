using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Puts header, rows, time line and legend together.</summary>
internal static class RibbonComposer
{
    private const int MostRows = 64;

    /// <summary>Lays out the whole picture.</summary>
    public static Picture Compose(RecordingResult recording, FigureSize size)
    {
        RibbonScale scale = new(size);
        RibbonLegend legend = new(recording, scale, size.Width);
        TimeAxis axis = new(recording, scale.Margin + scale.LeftColumn, size.Width - scale.Margin);
        ImmutableArray<ChannelResult> drawn = Drawn(recording);

        int rows = Math.Max(1, drawn.Length);
        float below = RibbonTimeLine.Height(scale, !recording.Trials.IsEmpty) + legend.Height + (scale.Margin / 2) + HiddenHeight(recording, scale);
        RibbonHeader header = Header(recording, scale, size, below, rows);
        float rest = header.Height + below;
        float rowHeight = MathF.Floor(Math.Clamp(RowRoom(size, rest, rows), scale.LowestRow, scale.HighestRow));
        Picture picture = new(size.Width, (int)MathF.Ceiling(drawn.IsEmpty ? header.Height : rest + (rows * rowHeight)));

        header.Draw(picture);
        if (drawn.IsEmpty)
        {
            return picture;
        }

        float rowsTop = MathF.Round(header.Height);
        float rowsBottom = rowsTop + (drawn.Length * rowHeight);
        DrawRows(picture, new RibbonPlan(recording, scale, axis, rowHeight), drawn, rowsTop, rowsBottom);
        float y = rowsBottom + RibbonTimeLine.Height(scale, !recording.Trials.IsEmpty);
        if (Hidden(recording, drawn) is { Length: > 0 } hidden)
        {
            picture.Text(TextMeasure.Fit(hidden, scale.Note, size.Width - (2 * scale.Margin)), scale.Note, scale.Margin, y);
        }

        legend.Draw(picture, y + HiddenHeight(recording, scale));
        return picture;
    }

    // What to do is said unless blocks became too low to compare, or the picture higher, because of it.
    private static RibbonHeader Header(RecordingResult recording, RibbonScale scale, FigureSize size, float below, int rows)
    {
        RibbonHeader bare = new(recording, scale, size.Width, withAdvice: false);
        RibbonHeader full = new(recording, scale, size.Width, withAdvice: true);
        float bareRow = RowRoom(size, bare.Height + below, rows);
        float fullRow = RowRoom(size, full.Height + below, rows);
        bool isTooMuch = bareRow >= scale.TallRow ? fullRow < scale.RoomyRow : bareRow >= scale.LowestRow && fullRow < scale.LowestRow;
        return isTooMuch ? bare : full;
    }

    private static float RowRoom(FigureSize size, float rest, int rows) => (size.Height - rest) / rows;

    private static void DrawRows(Picture picture, RibbonPlan plan, ImmutableArray<ChannelResult> drawn, float top, float bottom)
    {
        RibbonTimeLine.DrawGrid(picture, plan.Scale, plan.Axis, top, bottom);
        picture.Fill(Area.Between(plan.Scale.Margin, top, plan.Axis.Right, top + 1), Inks.Grid);
        for (int row = 0; row < drawn.Length; row++)
        {
            RibbonRow.Draw(picture, plan, drawn[row], top + (row * plan.RowHeight));
        }

        RibbonTimeLine.Draw(picture, plan, bottom + plan.Scale.Gap);
    }

    // File order is kept; when there are too many, the worst stay.
    private static ImmutableArray<ChannelResult> Drawn(RecordingResult recording)
    {
        if (recording.Channels.Length <= MostRows)
        {
            return recording.Channels;
        }

        HashSet<ChannelResult> worst = [.. recording.Channels
            .OrderByDescending(VerdictLooks.Of)
            .ThenByDescending(channel => channel.Count(Verdicts.Grade.Reject))
            .Take(MostRows)];
        return [.. recording.Channels.Where(worst.Contains)];
    }

    private static float HiddenHeight(RecordingResult recording, RibbonScale scale) =>
        recording.Channels.Length > MostRows ? TextMeasure.LineHeight(scale.Note) + scale.Gap : 0;

    private static string Hidden(RecordingResult recording, ImmutableArray<ChannelResult> drawn)
    {
        HashSet<ChannelResult> shown = [.. drawn];
        ChannelResult[] hidden = [.. recording.Channels.Where(channel => !shown.Contains(channel))];
        IEnumerable<string> parts = hidden
            .GroupBy(VerdictLooks.Of)
            .OrderByDescending(group => group.Key)
            .Select(group => $"{Quantities.Plain(group.Count())} {VerdictLooks.Word(group.Key)}");
        return hidden.Length == 0 ? string.Empty : $"Not drawn: {Quantities.Many(hidden.Length, "channel")} ({string.Join(", ", parts)}); the tables have all.";
    }
}
