using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The left part of a row: shape, name, verdict and reason in words.</summary>
internal static class RibbonRowText
{
    private const float NameShare = 0.42f;

    /// <summary>Draws it; several lines when the row has room, else one.</summary>
    public static void Draw(Picture picture, RibbonPlan plan, ChannelResult channel, float top)
    {
        if (plan.IsTall)
        {
            DrawLines(picture, plan, channel, top + plan.Scale.Gap);
        }
        else
        {
            DrawOneLine(picture, plan, channel, top + (plan.RowHeight / 2));
        }
    }

    private static void DrawLines(Picture picture, RibbonPlan plan, ChannelResult channel, float top)
    {
        RibbonScale scale = plan.Scale;
        float textLeft = scale.Margin + scale.Shape + scale.Gap;
        float width = plan.Axis.Left - (2 * scale.Gap) - textLeft;
        float nameLine = TextMeasure.LineHeight(scale.Name);
        DrawShape(picture, channel, Area.Around(scale.Margin + (scale.Shape / 2), top + (nameLine / 2), scale.Shape, scale.Shape));
        picture.Text(TextMeasure.Fit(PlainText.Of(channel.Name), scale.Name, width), scale.Name, textLeft, top);

        float bottom = top + plan.RowHeight - (2 * scale.Gap);
        float line = TextMeasure.LineHeight(scale.Words);
        float y = top + nameLine;
        int lines = Math.Clamp((int)((bottom - y) / line), 1, 3);
        foreach (string text in TextMeasure.Wrap(FigureText.Of(plan.Recording, channel), scale.Words, width, lines))
        {
            picture.Text(text, scale.Words, textLeft, y);
            y += line;
        }

        if (channel.Cells.IsEmpty)
        {
            return;
        }

        float noteLine = TextMeasure.LineHeight(scale.Note);
        foreach (string text in TextMeasure.Wrap(Trials(channel), scale.Note, width, (int)((bottom - y) / noteLine)))
        {
            picture.Text(text, scale.Note, textLeft, y);
            y += noteLine;
        }
    }

    private static void DrawOneLine(Picture picture, RibbonPlan plan, ChannelResult channel, float middle)
    {
        RibbonScale scale = plan.Scale;
        float shape = Math.Min(scale.Shape, plan.RowHeight - 6);
        DrawShape(picture, channel, Area.Around(scale.Margin + (shape / 2), middle, shape, shape));

        TextStyle nameStyle = scale.Words with { Bold = true };
        float left = scale.Margin + shape + scale.Gap;
        float right = plan.Axis.Left - (2 * scale.Gap);
        float lineTop = MathF.Round(middle - (TextMeasure.LineHeight(nameStyle) / 2));
        string name = TextMeasure.Fit(PlainText.Of(channel.Name), nameStyle, (right - left) * NameShare);
        Area nameBox = picture.Text(name, nameStyle, left, lineTop);
        float wordsLeft = nameBox.Right + (2 * scale.Gap);
        picture.Text(TextMeasure.Fit(ShortWords(plan, channel), scale.Words, right - wordsLeft), scale.Words, wordsLeft, lineTop);
    }

    // The shape has said the verdict; one line has room for the reason only.
    private static string ShortWords(RibbonPlan plan, ChannelResult channel)
    {
        bool hasReason = VerdictLooks.Of(channel) is VerdictLook.Questionable or VerdictLook.Reject;
        string reason = hasReason ? FigureText.Reason(plan.Recording, channel) : string.Empty;
        return reason.Length > 0 ? reason : FigureText.Of(plan.Recording, channel);
    }

    private static void DrawShape(Picture picture, ChannelResult channel, Area box) =>
        VerdictShape.Draw(picture, box, VerdictLooks.Of(channel), !channel.NotAssessed.IsEmpty);

    private static string Trials(ChannelResult channel)
    {
        ImmutableArray<VerdictLook> looks = [.. channel.Cells.Select(VerdictLooks.Of)];
        IEnumerable<string> counts = Enum.GetValues<VerdictLook>()
            .OrderDescending()
            .Select(look => (Word: VerdictLooks.Word(look), Count: looks.Count(one => one == look)))
            .Where(part => part.Count > 0)
            .Select(part => $"{Quantities.Plain(part.Count)} {part.Word}");
        return $"{Quantities.Many(channel.Cells.Length, "trial")}: {string.Join(", ", counts)}";
    }
}
