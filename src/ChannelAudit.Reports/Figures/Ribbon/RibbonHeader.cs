using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The title: the most important finding in words, its likely _cause, and which recording this is.</summary>
internal sealed class RibbonHeader
{
    private readonly RibbonScale _scale;
    private readonly Headline _headline;
    private readonly ImmutableArray<string> _titleLines;
    private readonly string _cause;
    private readonly string _note;

    public RibbonHeader(RecordingResult recording, RibbonScale scale, float width)
    {
        _scale = scale;
        _headline = Headline.Of(recording);
        float titleWidth = width - (2 * _scale.Margin) - TitleIndent;
        _titleLines = TextMeasure.Wrap(_headline.Text, _scale.Title, titleWidth, 2);
        _cause = TextMeasure.Fit(_headline.Cause, _scale.Cause, titleWidth);
        _note = TextMeasure.Fit(Note(recording), _scale.Note, titleWidth);
    }

    /// <summary>Height in pixels, with the space below.</summary>
    public float Height => (_scale.Margin * 0.7f) + (_titleLines.Length * TextMeasure.LineHeight(_scale.Title))
        + (_cause.Length == 0 ? 0 : TextMeasure.LineHeight(_scale.Cause)) + TextMeasure.LineHeight(_scale.Note) + (2 * _scale.Gap);

    private float TitleIndent => (_scale.Title.Size * 0.95f) + (1.5f * _scale.Gap);

    /// <summary>Draws it at the top.</summary>
    public void Draw(Picture picture)
    {
        float y = MathF.Round(_scale.Margin * 0.7f);
        float left = _scale.Margin + TitleIndent;
        float line = TextMeasure.LineHeight(_scale.Title);
        float shape = _scale.Title.Size * 0.95f;
        VerdictShape.Draw(picture, Area.Around(_scale.Margin + (shape / 2), y + (line / 2), shape, shape), _headline.Look);
        foreach (string text in _titleLines)
        {
            picture.Text(text, _scale.Title, left, y);
            y += line;
        }

        if (_cause.Length > 0)
        {
            picture.Text(_cause, _scale.Cause, left, y);
            y += TextMeasure.LineHeight(_scale.Cause);
        }

        picture.Text(_note, _scale.Note, left, y);
    }

    private static string Note(RecordingResult recording)
    {
        IEnumerable<string> verdicts = Enum.GetValues<VerdictLook>()
            .OrderDescending()
            .Select(look => (Word: VerdictLooks.Word(look), Count: recording.Channels.Count(channel => VerdictLooks.Of(channel) == look)))
            .Where(part => part.Count > 0)
            .Select(part => $"{Quantities.Plain(part.Count)} {part.Word}");
        string channels = Quantities.Many(recording.Channels.Length, "channel");
        string counted = recording.Channels.IsEmpty ? channels : $"{channels}: {string.Join(", ", verdicts)}";
        string trials = recording.Trials.IsEmpty ? "no trials" : Quantities.Many(recording.Trials.Length, "trial");
        return $"{counted} \u00B7 {trials} \u00B7 {Length(recording.DurationS)} long \u00B7 {PlainText.Of(recording.Id)}";
    }

    private static string Length(double seconds)
    {
        const double clockFromS = 60;
        return seconds < clockFromS ? $"{Quantities.Short(seconds)} s" : Quantities.Clock(seconds);
    }
}
