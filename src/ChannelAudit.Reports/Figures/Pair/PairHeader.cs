using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>The title of a pair sheet: what was decided, why, and what to do.</summary>
internal static class PairHeader
{
    private const int MostLines = 2;

    /// <summary>Draws it at the top.</summary>
    /// <returns>Where the rest may begin.</returns>
    public static float Draw(Picture picture, PairSubject subject, float width)
    {
        float line = TextMeasure.LineHeight(subject.Scale.Title);
        float shape = subject.Scale.Title.Size * 0.95f;
        float left = subject.Scale.Margin + shape + (1.5f * subject.Scale.Gap);
        float room = width - left - subject.Scale.Margin;
        float y = MathF.Round(subject.Scale.Margin * 0.6f);
        VerdictShape.Draw(picture, Area.Around(subject.Scale.Margin + (shape / 2), y + (line / 2), shape, shape), Look(subject));
        foreach (string text in TextMeasure.Wrap(Title(subject), subject.Scale.Title, room, MostLines))
        {
            picture.Text(text, subject.Scale.Title, left, y);
            y += line;
        }

        foreach (string text in new[] { $"Why: {PlainText.Of(subject.Result.Evidence.Why)}", WhatToDo(subject) })
        {
            foreach (string part in TextMeasure.Wrap(text, subject.Scale.Words, room, MostLines))
            {
                picture.Text(part, subject.Scale.Words, left, y);
                y += TextMeasure.LineHeight(subject.Scale.Words);
            }
        }

        return y + subject.Scale.Gap;
    }

    private static VerdictLook Look(PairSubject subject) => subject.View.Grade switch
    {
        Grade.Reject => VerdictLook.Reject,
        Grade.Questionable => VerdictLook.Questionable,
        _ => subject.Result.Evidence.NotAssessed is null ? VerdictLook.Pass : VerdictLook.NotAssessed,
    };

    private static string Title(PairSubject subject)
    {
        string pair = $"{subject.NameA} and {subject.NameB}";
        string when = FigureText.When(subject.View.Stretch.FromS, subject.View.Stretch.ToS, subject.Recording.DurationS);
        return Look(subject) switch
        {
            VerdictLook.Reject => $"{pair} are joined: they carry one signal, {when}",
            VerdictLook.Questionable => $"{pair} may be joined at one electrode, {when}",
            VerdictLook.NotAssessed => $"{pair} share signal; whether they are joined was not assessed",
            _ when subject.View.IsCommonSource => $"{pair} share a source with all sites; no sign of a joint",
            _ => $"Crosstalk between {pair}, no sign of a joint",
        };
    }

    private static string WhatToDo(PairSubject subject)
    {
        string code = subject.View.Grade > Grade.Pass ? ReasonCode.Bridge : subject.View.IsCommonSource ? "common-source" : "crosstalk";
        string data = subject.View.Grade switch
        {
            Grade.Reject => " Neither channel can be scored where they are joined.",
            Grade.Questionable => " A resistance reading across the two sites would settle it; until then a person decides about the data.",
            _ => string.Empty,
        };
        return Advice.WhatToDo(code, data);
    }
}
