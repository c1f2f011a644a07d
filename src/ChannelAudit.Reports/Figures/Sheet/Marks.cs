using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Verdicts;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>Faults on a trace: a tint behind it, a bar above it, and the letter of the reason.</summary>
internal static class Marks
{
    private const float Least = 3;

    /// <summary>Height of the lane of bars and letters at the top of a field.</summary>
    public static float LaneHeight(SheetSubject subject) => TextMeasure.LineHeight(Letter(subject));

    /// <summary>What the letters mean, for a heading: <c>; F: flat signal</c>; empty without any.</summary>
    public static string Key(IEnumerable<string> reasons) => string.Concat(reasons
        .Distinct(StringComparer.Ordinal)
        .OrderBy(ReasonLetters.Rank)
        .Select(reason => $"; {ReasonLetters.For(reason)}: {FigureText.Names([reason])}"));

    /// <summary>Draws marks, the worst last and on top; letters that would touch, or stand in a stretch that has the same one, are left out.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="subject">For sizes.</param>
    /// <param name="field">The field of the trace.</param>
    /// <param name="marks">From and to in pixels, reason and grade.</param>
    public static void Draw(Picture picture, SheetSubject subject, Area field, IReadOnlyList<(float From, float To, string Reason, Grade Grade)> marks)
    {
        foreach ((float from, float to, string _, Grade grade) in marks.OrderBy(mark => mark.Grade))
        {
            Area box = Area.Between(from, field.Top, Math.Min(field.Right, Math.Max(to, from + Least)), field.Bottom);
            picture.Fill(box, grade == Grade.Reject ? Inks.RejectTint : Inks.QuestionableFill);
            picture.Fill(new Area(box.Left, field.Top, box.Width, 4), grade == Grade.Reject ? Inks.RejectLine : Inks.QuestionableLine);
        }

        float freeFrom = field.Left;
        Dictionary<(string Reason, Grade Grade), float> said = [];
        foreach ((float from, float to, string reason, Grade grade) in marks.OrderBy(mark => mark.From).ThenByDescending(mark => mark.Grade))
        {
            TextStyle style = Letter(subject) with { Color = grade == Grade.Reject ? Inks.RejectLine : Inks.QuestionableLine };
            string letter = ReasonLetters.For(reason);
            float width = TextMeasure.Width(letter, style);
            float left = Math.Min(Math.Max(from + 2, field.Left + 2), field.Right - width - 2);

            // A trial of a stretch that has the letter already says nothing new.
            bool isSaid = from < said.GetValueOrDefault((reason, grade), float.MinValue);
            if (left >= freeFrom && !isSaid)
            {
                picture.Text(letter, style, MathF.Round(left), field.Top + 4);
                freeFrom = left + width + 4;
                said[(reason, grade)] = to;
            }
        }
    }

    private static TextStyle Letter(SheetSubject subject) => subject.Scale.Words with { Bold = true };
}
