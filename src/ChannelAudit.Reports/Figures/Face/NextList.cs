using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>The bottom of the picture: what to do next, what was not checked, and the caution in full.</summary>
internal sealed class NextList
{
    private const float Indent = 44;
    private const int MostLines = 3;
    private const string NoStep = "No step that is known would change this; do-next.txt has the details.";

    private readonly ImmutableArray<ImmutableArray<string>> _steps;
    private readonly bool _isNumbered;
    private readonly ImmutableArray<string> _notes;
    private readonly ImmutableArray<string> _caution;

    /// <summary>Sets the texts in lines.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="width">The room.</param>
    public NextList(PilotReport report, float width)
    {
        _steps = [.. report.Next.Select(step => TextMeasure.Wrap(PlainText.Of(StepWords.Of(step)), PilotLook.Step, width - Indent, MostLines))];
        _isNumbered = !_steps.IsEmpty;
        if (!_isNumbered)
        {
            _steps = [[report.Answer == PilotAnswer.Start ? "Nothing: every site passes." : NoStep]];
        }

        string open = string.Join("; ", report.NotChecked);
        string marks = MarkWords.Of(report);
        _notes =
        [
            .. marks.Length == 0 ? [] : TextMeasure.Wrap(marks, PilotLook.Note, width, MostLines),
            .. open.Length == 0 ? Array.Empty<string>() : [TextMeasure.Fit(PlainText.Of($"Not checked: {open}"), PilotLook.Note, width)],
        ];
        _caution = StepWords.NeedCaution(report.Next) ? TextMeasure.Wrap(StepWords.ShortCaution, PilotLook.Words, width, MostLines) : [];
    }

    /// <summary>Height in pixels.</summary>
    public float Height => TextMeasure.LineHeight(PilotLook.Title) + (_steps.Sum(step => step.Length) * TextMeasure.LineHeight(PilotLook.Step))
        + (_notes.Length > 0 ? (_notes.Length * TextMeasure.LineHeight(PilotLook.Note)) + 8 : 0)
        + (_caution.Length > 0 ? (_caution.Length * TextMeasure.LineHeight(PilotLook.Words)) + 8 : 0);

    /// <summary>Draws it from a point downwards.</summary>
    public void Draw(Picture picture, float left, float top)
    {
        float y = picture.Text("Do next", PilotLook.Title, left, top).Bottom;
        for (int i = 0; i < _steps.Length; i++)
        {
            picture.Text(_isNumbered ? (i + 1).Plain() : string.Empty, PilotLook.StepNumber, left, y);
            y = Lines(picture, _steps[i], PilotLook.Step, _isNumbered ? left + Indent : left, y);
        }

        y = _notes.Length > 0 ? Lines(picture, _notes, PilotLook.Note, left, y + 8) : y;
        if (_caution.Length > 0)
        {
            Lines(picture, _caution, PilotLook.Words, left, y + 8);
        }
    }

    private static float Lines(Picture picture, ImmutableArray<string> lines, TextStyle style, float left, float top)
    {
        float y = top;
        foreach (string line in lines)
        {
            picture.Text(line, style, left, y);
            y += TextMeasure.LineHeight(style);
        }

        return y;
    }
}
