using System.Collections.Immutable;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>The title: the most important finding in words, its likely cause, what to do, and which recording this is.</summary>
internal sealed class RibbonHeader
{
    private readonly RibbonScale _scale;
    private readonly Headline _headline;
    private readonly ImmutableArray<string> _titleLines;
    private readonly ImmutableArray<(string Text, TextStyle Style)> _lines;
    private readonly string _note;

    /// <summary>Puts the words together.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="scale">Sizes.</param>
    /// <param name="width">Width of the picture.</param>
    /// <param name="withAdvice">Whether to say what to do, if it can be said in full: a caution is never cut.</param>
    public RibbonHeader(RecordingResult recording, RibbonScale scale, float width, bool withAdvice)
    {
        _scale = scale;
        _headline = Headline.Of(recording);
        float room = width - (2 * _scale.Margin) - TitleIndent;
        _titleLines = TextMeasure.Wrap(_headline.Text, _scale.Title, room, 2);
        _lines = [.. CauseLines(room), .. withAdvice ? AdviceLines(room) : []];
        _note = Note(recording, room);
    }

    /// <summary>Height in pixels, with the space below.</summary>
    public float Height => (_scale.Margin * 0.7f) + (_titleLines.Length * TextMeasure.LineHeight(_scale.Title))
        + _lines.Sum(line => TextMeasure.LineHeight(line.Style)) + TextMeasure.LineHeight(_scale.Note) + (2 * _scale.Gap);

    private bool IsFault => _headline.Look is VerdictLook.Questionable or VerdictLook.Reject;

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

        foreach ((string text, TextStyle style) in _lines)
        {
            picture.Text(text, style, left, y);
            y += TextMeasure.LineHeight(style);
        }

        picture.Text(_note, _scale.Note, left, y);
    }

    private ImmutableArray<(string Text, TextStyle Style)> CauseLines(float room)
    {
        string cause = IsFault ? Advice.Cause(_headline.Cause) : _headline.Cause;
        return cause.Length > 0 ? [(TextMeasure.Fit(cause, _scale.Cause, room), _scale.Cause)] : [];
    }

    private ImmutableArray<(string Text, TextStyle Style)> AdviceLines(float room)
    {
        if (!IsFault || _headline.Reason is not { } reason)
        {
            return [];
        }

        string advice = Advice.WhatToDo(reason);
        ImmutableArray<string> lines = TextMeasure.Wrap(advice, _scale.Words, room, 2);
        return string.Equals(string.Join(' ', lines), advice, StringComparison.Ordinal) ? [.. lines.Select(line => (line, _scale.Words))] : [];
    }

    // Fewer faults are named where the line would be cut: its end says which recording this is.
    private string Note(RecordingResult recording, float room)
    {
        const int most = 3;
        string[] notes = [.. Enumerable.Range(1, most).Reverse().Select(count => Note(recording, OtherReasons.Of(recording, _headline.Reason, count)))];
        return TextMeasure.Fit(Array.Find(notes, note => TextMeasure.Width(note, _scale.Note) <= room) ?? notes[^1], _scale.Note, room);
    }

    private static string Note(RecordingResult recording, string others)
    {
        IEnumerable<string> verdicts = Enum.GetValues<VerdictLook>()
            .OrderDescending()
            .Select(look => (Word: VerdictLooks.Word(look), Count: recording.Channels.Count(channel => VerdictLooks.Of(channel) == look)))
            .Where(part => part.Count > 0)
            .Select(part => $"{Quantities.Plain(part.Count)} {part.Word}");
        string channels = Quantities.Many(recording.Channels.Length, "channel");
        string counted = recording.Channels.IsEmpty ? channels : $"{channels}: {string.Join(", ", verdicts)}";
        string trials = recording.Trials.IsEmpty ? "no trials" : Quantities.Many(recording.Trials.Length, "trial");
        IEnumerable<string> parts = [counted, others, trials, $"{Length(recording.DurationS)} long", PlainText.Of(recording.Id)];
        return string.Join(" \u00B7 ", parts.Where(part => part.Length > 0));
    }

    private static string Length(double seconds)
    {
        const double clockFromS = 60;
        return seconds < clockFromS ? $"{Quantities.Short(seconds)} s" : Quantities.Clock(seconds);
    }
}
