using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>The medians that decide with their limits, and beside them what joined sites, crosstalk and separate sites are expected to show.</summary>
internal static class PatternTable
{
    private const float LabelShare = 0.2f;
    private const float OwnShare = 0.26f;

    /// <summary>Draws the table.</summary>
    public static void Draw(Picture picture, PairSubject subject, Area outer)
    {
        TextStyle bold = subject.Note with { Bold = true, Color = Inks.Ink };
        float line = TextMeasure.LineHeight(subject.Note);
        string heading = (IsPart(subject) ? "Where they are joined: what" : "What")
            + " decides, in size from 0 to 1, beside what to expect: bars are expected, the disc is this pair in every column";
        picture.Text(TextMeasure.Fit(heading, bold, outer.Width), bold, outer.Left, outer.Top);
        ImmutableArray<PatternRow> rows = PatternRow.All(subject);
        float top = outer.Top + (2 * line) + 8;
        if ((outer.Bottom - top) / rows.Length < line)
        {
            rows = PatternRow.Few(subject);
        }

        Area[] columns = Columns(outer, subject.Scale.Gap);
        DrawTitles(picture, subject, columns, outer.Top + line + 4);
        float height = (outer.Bottom - top) / rows.Length;
        for (int row = 0; row < rows.Length; row++)
        {
            DrawRow(picture, subject, rows[row], columns, Area.Between(outer.Left, top + (row * height), outer.Right, top + ((row + 1) * height)));
        }
    }

    private static bool IsPart(PairSubject subject) => subject.View.Medians != subject.Result.Evidence;

    // Labels, this pair, then the patterns.
    private static Area[] Columns(Area outer, float gap)
    {
        float[] shares = [LabelShare, OwnShare, .. BridgePattern.All.Select(_ => (1 - LabelShare - OwnShare) / BridgePattern.All.Length)];
        Area[] columns = new Area[shares.Length];
        float left = outer.Left;
        for (int i = 0; i < shares.Length; i++)
        {
            float right = left + (outer.Width * shares[i]);
            columns[i] = Area.Between(left + (i == 0 ? 0 : gap), outer.Top, right - gap, outer.Bottom);
            left = right;
        }

        return columns;
    }

    private static void DrawTitles(Picture picture, PairSubject subject, Area[] columns, float y)
    {
        TextStyle bold = subject.Note with { Bold = true, Color = Inks.Ink };
        TextStyle limits = subject.Note;
        Area own = picture.Text("this pair", bold, columns[1].Left, y);
        string key = "line: bridged, dotted: suspected";
        if (own.Right + 12 + TextMeasure.Width(key, limits) <= columns[1].Right)
        {
            picture.Text(key, limits, own.Right + 12, y);
        }

        for (int i = 0; i < BridgePattern.All.Length; i++)
        {
            picture.Text(TextMeasure.Fit(BridgePattern.All[i].Name, bold, columns[i + 2].Width), bold, columns[i + 2].Left, y);
        }
    }

    private static void DrawRow(Picture picture, PairSubject subject, PatternRow row, Area[] columns, Area band)
    {
        float line = TextMeasure.LineHeight(subject.Note);
        float textTop = MathF.Round(band.CentreY - (line / 2));
        TextStyle words = subject.Note with { Color = Inks.Ink };
        picture.Text(TextMeasure.Fit(row.Label, words, columns[0].Width), words, columns[0].Left, textTop);

        string number = row.Value is { } value ? value.ToString("0.00", CultureInfo.InvariantCulture) : "not known";
        float numbers = TextMeasure.Width("not known", words) + 8;
        picture.Text(number, words with { Bold = row.Value is not null }, columns[1].Right - TextMeasure.Width(number, words with { Bold = row.Value is not null }), textTop);
        Area own = Cell(Area.Between(columns[1].Left, band.Top, columns[1].Right - numbers, band.Bottom));
        picture.Fill(own, Inks.Ribbon);
        DrawLimits(picture, subject, row, own);
        DrawValue(picture, row, own);
        for (int i = 0; i < BridgePattern.All.Length; i++)
        {
            Area cell = Cell(Area.Between(columns[i + 2].Left, band.Top, columns[i + 2].Right, band.Bottom));
            picture.Fill(cell, Inks.Ribbon);
            (double from, double to) = row.Expected(BridgePattern.All[i]);
            Area bar = Area.Between(X(cell, from), cell.Top + (cell.Height * 0.15f), Math.Max(X(cell, from) + 4, X(cell, to)), cell.Bottom - (cell.Height * 0.15f));
            picture.Fill(bar, Inks.PassFill);
            picture.Outline(bar, Inks.PassLine, 1);
            DrawValue(picture, row, cell);
        }
    }

    private static Area Cell(Area band) => Area.Between(band.Left, band.Top + 2, band.Right, band.Bottom - 2);

    private static float X(Area cell, double size) => cell.Left + (float)(cell.Width * Math.Clamp(size, 0, 1));

    private static void DrawLimits(Picture picture, PairSubject subject, PatternRow row, Area cell)
    {
        foreach (BridgeLimit limit in subject.View.Limits.Where(limit => string.Equals(limit.Measure, row.Measure, StringComparison.Ordinal)))
        {
            bool isReject = limit.Grade == Grade.Reject;
            float x = MathF.Round(X(cell, limit.Value));
            picture.Line(x, cell.Top, x, cell.Bottom, isReject ? Inks.RejectLine : Inks.QuestionableLine, isReject ? 2.5f : 2, isReject ? Dash.Solid : Dash.Dotted);
        }
    }

    private static void DrawValue(Picture picture, PatternRow row, Area cell)
    {
        if (row.Value is { } value)
        {
            float size = Math.Clamp(cell.Height * 0.5f, 7, 14);
            float x = Math.Clamp(X(cell, Math.Abs(value)), cell.Left + (size / 2), cell.Right - (size / 2));
            picture.Disc(Area.Around(x, cell.CentreY, size, size), Inks.Ink, Inks.Paper, 1);
        }
    }
}
