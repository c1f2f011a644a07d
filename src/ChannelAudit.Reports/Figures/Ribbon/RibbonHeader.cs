using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The title: the most important finding in words, its likely cause, and which recording this is.</summary>
internal sealed class RibbonHeader
{
    private readonly RibbonScale scale;
    private readonly Headline headline;
    private readonly ImmutableArray<string> titleLines;
    private readonly string cause;
    private readonly string note;

    public RibbonHeader(RecordingResult recording, RibbonScale scale, float width)
    {
        this.scale = scale;
        headline = Headline.Of(recording);
        float titleWidth = width - (2 * scale.Margin) - TitleIndent;
        titleLines = TextMeasure.Wrap(headline.Text, scale.Title, titleWidth, 2);
        cause = TextMeasure.Fit(headline.Cause, scale.Cause, titleWidth);
        note = TextMeasure.Fit(Note(recording), scale.Note, titleWidth);
    }

    /// <summary>Height in pixels, with the space below.</summary>
    public float Height => (scale.Margin * 0.7f) + (titleLines.Length * TextMeasure.LineHeight(scale.Title))
        + (cause.Length == 0 ? 0 : TextMeasure.LineHeight(scale.Cause)) + TextMeasure.LineHeight(scale.Note) + (2 * scale.Gap);

    private float TitleIndent => (scale.Title.Size * 0.95f) + (1.5f * scale.Gap);

    /// <summary>Draws it at the top.</summary>
    public void Draw(Picture picture)
    {
        float y = MathF.Round(scale.Margin * 0.7f);
        float left = scale.Margin + TitleIndent;
        float line = TextMeasure.LineHeight(scale.Title);
        float shape = scale.Title.Size * 0.95f;
        VerdictShape.Draw(picture, Area.Around(scale.Margin + (shape / 2), y + (line / 2), shape, shape), headline.Look);
        foreach (string text in titleLines)
        {
            picture.Text(text, scale.Title, left, y);
            y += line;
        }

        if (cause.Length > 0)
        {
            picture.Text(cause, scale.Cause, left, y);
            y += TextMeasure.LineHeight(scale.Cause);
        }

        picture.Text(note, scale.Note, left, y);
    }

    private static string Note(RecordingResult recording)
    {
        IEnumerable<string> verdicts = Enum.GetValues<VerdictLook>()
            .OrderDescending()
            .Select(look => (Word: VerdictLooks.Word(look), Count: recording.Channels.Count(channel => VerdictLooks.Of(channel) == look)))
            .Where(part => part.Count > 0)
            .Select(part => $"{FigureNumbers.Whole(part.Count)} {part.Word}");
        string channels = FigureNumbers.Count(recording.Channels.Length, "channel");
        string counted = recording.Channels.IsEmpty ? channels : $"{channels}: {string.Join(", ", verdicts)}";
        string trials = recording.Trials.IsEmpty ? "no trials" : FigureNumbers.Count(recording.Trials.Length, "trial");
        return $"{counted} \u00B7 {trials} \u00B7 {FigureNumbers.Length(recording.DurationS)} long \u00B7 {PlainText.Of(recording.Id)}";
    }
}
