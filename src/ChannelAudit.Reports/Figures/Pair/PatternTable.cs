using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>The medians that decide with their limits, and beside them what joined sites, crosstalk and separate sites are expected to show.</summary>
internal static class PatternTable
{
    private const float LabelShare = 0.19f;
    private const float OwnShare = 0.27f;
    private const float GroupGap = 6;

    /// <summary>How far beside a bar a value still counts as on it.</summary>
    private const double Tolerance = 0.02;

    /// <summary>Draws the table.</summary>
    public static void Draw(Picture picture, PairSubject subject, Area outer)
    {
        TextStyle bold = subject.Note with { Bold = true, Color = Inks.Ink };
        float line = TextMeasure.LineHeight(subject.Note);
        string heading = (subject.View.IsPart ? "Where they are joined: what" : "What")
            + " decides, in size from 0 to 1 (the sign tells polarity), beside what to expect: bars expected, disc this pair";
        picture.Text(TextMeasure.Fit(heading, bold, outer.Width), bold, outer.Left, outer.Top);
        ImmutableArray<PatternRow> rows = PatternRow.All(subject);
        float top = outer.Top + (3 * line) + 8;
        bool isLow = (outer.Bottom - top - GroupGap) / rows.Length < line;
        if (isLow)
        {
            rows = PatternRow.Few(subject);
            top -= line;
        }

        Area[] columns = Columns(outer, subject.Scale.Gap);
        DrawTitles(picture, subject, rows, columns, outer.Top + line + 4, isLow);
        float height = (outer.Bottom - top - GroupGap) / rows.Length;
        for (int row = 0; row < rows.Length; row++)
        {
            float from = top + (row * height) + (rows[row].IsRest ? 0 : GroupGap);
            DrawRow(picture, subject, rows[row], columns, Area.Between(outer.Left, from, outer.Right, from + height));
        }
    }

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

    private static void DrawTitles(Picture picture, PairSubject subject, ImmutableArray<PatternRow> rows, Area[] columns, float y, bool isLow)
    {
        TextStyle bold = subject.Note with { Bold = true, Color = Inks.Ink };
        float second = y + TextMeasure.LineHeight(bold);
        picture.Text(TextMeasure.Fit("this pair; line: bridged when all of a block reach it", bold, columns[1].Right - columns[1].Left), bold, columns[1].Left, y);
        if (!isLow)
        {
            picture.Text(TextMeasure.Fit("dotted: suspected", subject.Note, columns[1].Width), subject.Note, columns[1].Left, second);
        }

        for (int i = 0; i < BridgePattern.All.Length; i++)
        {
            BridgePattern pattern = BridgePattern.All[i];
            Area column = columns[i + 2];
            picture.Text(TextMeasure.Fit(pattern.Name, bold, column.Width), bold, column.Left, y);
            if (!isLow)
            {
                picture.Text(TextMeasure.Fit(Fits(rows, pattern), subject.Note, column.Width), subject.Note, column.Left, second);
            }
        }
    }

    private static string Fits(ImmutableArray<PatternRow> rows, BridgePattern pattern)
    {
        double[] known = [.. rows.Where(row => row.Value is not null).Select(row => Math.Abs(row.Value!.Value))];
        int fits = rows.Count(row => row.Value is { } value && IsOn(row.Expected(pattern), Math.Abs(value)));
        return $"{fits.Plain()} of {known.Length.Plain()} fit";
    }

    // A part of more than all is all, seen at a site that is quieter itself.
    private static bool IsOn((double From, double To) bar, double size) => Math.Min(size, 1) >= bar.From - Tolerance && Math.Min(size, 1) <= bar.To + Tolerance;

    private static void DrawRow(Picture picture, PairSubject subject, PatternRow row, Area[] columns, Area band)
    {
        float line = TextMeasure.LineHeight(subject.Note);
        float textTop = MathF.Round(band.CentreY - (line / 2));
        TextStyle words = subject.Note with { Color = Inks.Ink };
        picture.Text(TextMeasure.Fit(row.Label, words, columns[0].Width), words, columns[0].Left, textTop);

        string number = row.Value is { } value ? value.ToString("0.00", CultureInfo.InvariantCulture) : "not known";
        float numbers = TextMeasure.Width("not known", words) + 8;
        TextStyle numberStyle = words with { Bold = row.Value is not null };
        picture.Text(number, numberStyle, columns[1].Right - TextMeasure.Width(number, numberStyle), textTop);
        Area own = Cell(Area.Between(columns[1].Left, band.Top, columns[1].Right - numbers, band.Bottom));
        DrawCell(picture, own);
        DrawLimits(picture, subject, row, own);
        DrawValue(picture, row, own);
        for (int i = 0; i < BridgePattern.All.Length; i++)
        {
            Area cell = Cell(Area.Between(columns[i + 2].Left, band.Top, columns[i + 2].Right, band.Bottom));
            DrawCell(picture, cell);
            (double from, double to) = row.Expected(BridgePattern.All[i]);
            Area bar = Area.Between(X(cell, from), cell.Top + (cell.Height * 0.15f), Math.Max(X(cell, from) + 4, X(cell, to)), cell.Bottom - (cell.Height * 0.15f));
            picture.Fill(bar, Inks.PassFill);
            picture.Outline(bar, Inks.PassLine, 1);
            DrawValue(picture, row, cell);
        }
    }

    // A fine line at one half, to compare columns by.
    private static void DrawCell(Picture picture, Area cell)
    {
        picture.Fill(cell, Inks.Ribbon);
        picture.Fill(new Area(MathF.Round(X(cell, 0.5)), cell.Top, 1, cell.Height), Inks.Grid);
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

    // At the true place, also at the ends: pushed inwards it would lie on a bar that it is not on.
    private static void DrawValue(Picture picture, PatternRow row, Area cell)
    {
        if (row.Value is { } value)
        {
            float size = Math.Clamp(cell.Height * 0.4f, 7, 11);
            picture.Disc(Area.Around(X(cell, Math.Abs(value)), cell.CentreY, size, size), Inks.Ink, Inks.Paper, 1);
        }
    }
}
