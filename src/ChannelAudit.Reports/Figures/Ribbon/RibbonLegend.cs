using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>What the shapes, feet, bars and letters of this ribbon mean; only what is in use is explained.</summary>
internal sealed class RibbonLegend
{
    private readonly RibbonScale _scale;
    private readonly List<(Action<Picture, Area>? Sign, string Letter, string Text)> _items = [];
    private readonly List<(int Item, float Left, int Line)> _places = [];

    public RibbonLegend(RecordingResult recording, RibbonScale scale, float width)
    {
        _scale = scale;
        AddShapes(recording);
        AddMarks(recording);
        int firstLetter = _items.Count;
        AddLetters(recording);
        Flow(width, firstLetter);
    }

    /// <summary>Height in pixels.</summary>
    public float Height => ((_places.Count == 0 ? 0 : _places[^1].Line + 1) * LineHeight) + _scale.Gap;

    private float LineHeight => Math.Max(TextMeasure.LineHeight(_scale.Note), SignSize) + (_scale.Gap / 2);

    private float SignSize => Math.Max(14, 20 * _scale.Unit);

    private TextStyle LetterStyle => _scale.Note with { Bold = true, Color = Inks.Ink };

    /// <summary>Draws it with its upper edge at a height.</summary>
    public void Draw(Picture picture, float top)
    {
        foreach ((int item, float left, int line) in _places)
        {
            (Action<Picture, Area>? sign, string letter, string text) = _items[item];
            float middle = top + (line * LineHeight) + (LineHeight / 2);
            float textTop = MathF.Round(middle - (TextMeasure.LineHeight(_scale.Note) / 2));
            sign?.Invoke(picture, Area.Around(left + (SignSize / 2), middle, SignSize, SignSize));
            float textLeft = left + (sign is null ? 0 : SignSize + 6);
            if (letter.Length > 0)
            {
                textLeft = picture.Text(letter, LetterStyle, textLeft, textTop).Right + 6;
            }

            picture.Text(text, _scale.Note, textLeft, textTop);
        }
    }

    private void AddShapes(RecordingResult recording)
    {
        foreach (VerdictLook look in new[] { VerdictLook.Pass, VerdictLook.Questionable, VerdictLook.Reject })
        {
            _items.Add(((picture, box) => VerdictShape.Draw(picture, box, look), string.Empty, VerdictLooks.Word(look)));
        }

        bool hasCells = recording.Channels.Any(channel => !channel.Cells.IsEmpty);
        if (recording.Channels.Any(channel => VerdictLooks.Of(channel) == VerdictLook.NotAssessed || channel.Cells.Any(cell => VerdictLooks.Of(cell) == VerdictLook.NotAssessed)))
        {
            _items.Add(((picture, box) => VerdictShape.Draw(picture, box, VerdictLook.NotAssessed), string.Empty, "not assessed"));
        }

        if (recording.Channels.Any(channel => IsOpen(channel) || channel.Cells.Any(IsOpen)))
        {
            _items.Add(((picture, box) => VerdictShape.Draw(picture, box, VerdictLook.Pass, hasOpenQuestions: true), string.Empty, "pass, but not all was assessed"));
        }

        if (hasCells)
        {
            _items.Add((null, string.Empty, "the higher a block, the worse"));
        }
    }

    private void AddMarks(RecordingResult recording)
    {
        foreach ((TrialRole role, string word) in new[] { (TrialRole.Rest, "rest"), (TrialRole.Task, "task") })
        {
            if (recording.Trials.Any(trial => trial.Role == role))
            {
                _items.Add(((picture, box) => RibbonRow.DrawFoot(picture, role, new Area(box.Left, box.CentreY - 2, box.Width, 5)), string.Empty, word));
            }
        }

        if (!recording.Gaps.IsEmpty)
        {
            _items.Add((RibbonRow.DrawGap, string.Empty, "nothing stored"));
        }

        (Grade Grade, bool IsScattered)[] bars =
        [
            .. recording.Channels
                .SelectMany(channel => RibbonPlan.Stretches(channel).Select(one => (one.Grade, ScatteredFault.Is(recording, channel, one))))
                .Distinct()
                .OrderByDescending(bar => bar.Grade),
        ];
        AddBars([.. bars.Where(bar => !bar.IsScattered).Select(bar => bar.Grade)], isScattered: false, "bar: how long it lasts");
        AddBars([.. bars.Where(bar => bar.IsScattered).Select(bar => bar.Grade)], isScattered: true, "bar: thick in trials that show it, thin between");
    }

    private void AddBars(Grade[] grades, bool isScattered, string text)
    {
        if (grades.Length > 0)
        {
            _items.Add(((picture, box) => StretchLanes.DrawSign(picture, box, grades, isScattered), string.Empty, text));
        }
    }

    private void AddLetters(RecordingResult recording)
    {
        IEnumerable<string> reasons = recording.Channels.SelectMany(channel => channel.Cells
            .Where(cell => VerdictLooks.Of(cell) >= VerdictLook.Questionable)
            .SelectMany(cell => cell.Reasons)
            .Concat(RibbonPlan.Stretches(channel).Select(finding => finding.Reason)));
        IEnumerable<(string Letter, string Name)> letters = reasons
            .Distinct(StringComparer.Ordinal)
            .OrderBy(ReasonLetters.Rank)
            .ThenBy(reason => reason, StringComparer.Ordinal)
            .Select(reason => (ReasonLetters.For(reason), FigureText.Names([reason])));
        _items.AddRange(letters.Select(pair => ((Action<Picture, Area>?)null, pair.Letter, pair.Name)));
    }

    private void Flow(float width, int firstLetter)
    {
        float right = width - _scale.Margin;
        float left = _scale.Margin;
        int line = 0;
        for (int item = 0; item < _items.Count; item++)
        {
            _items[item] = _items[item] with { Text = TextMeasure.Fit(_items[item].Text, _scale.Note, right - _scale.Margin - (3 * SignSize)) };
            float itemWidth = WidthOf(item);
            if (left > _scale.Margin && (left + itemWidth > right || item == firstLetter))
            {
                line++;
                left = _scale.Margin;
            }

            _places.Add((item, left, line));
            left += itemWidth + (3 * _scale.Gap);
        }
    }

    private float WidthOf(int item)
    {
        (Action<Picture, Area>? sign, string letter, string text) = _items[item];
        return (sign is null ? 0 : SignSize + 6) + (letter.Length == 0 ? 0 : TextMeasure.Width(letter, LetterStyle) + 6) + TextMeasure.Width(text, _scale.Note);
    }

    private static bool IsOpen(ChannelResult channel) => !channel.NotAssessed.IsEmpty && VerdictLooks.Of(channel) == VerdictLook.Pass;

    private static bool IsOpen(CellResult cell) => !cell.NotAssessed.IsEmpty && cell.Verdict == Grade.Pass && VerdictLooks.Of(cell) == VerdictLook.Pass;
}
