using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The title of a sheet: the finding in words, its likely cause and whether other channels show it, what to do.</summary>
internal static class SheetHeader
{
    /// <summary>Draws it at the top.</summary>
    /// <returns>Where the rest may begin.</returns>
    public static float Draw(Picture picture, SheetSubject subject, float width)
    {
        Headline headline = Headline.Of(subject.Recording, subject.Channel);
        float line = TextMeasure.LineHeight(subject.Scale.Title);
        float shape = subject.Scale.Title.Size * 0.95f;
        float left = subject.Scale.Margin + shape + (1.5f * subject.Scale.Gap);
        float room = width - left - subject.Scale.Margin;
        float y = MathF.Round(subject.Scale.Margin * 0.6f);
        VerdictShape.Draw(picture, Area.Around(subject.Scale.Margin + (shape / 2), y + (line / 2), shape, shape), headline.Look);
        foreach (string text in TextMeasure.Wrap(headline.Text, subject.Scale.Title, room, 2))
        {
            picture.Text(text, subject.Scale.Title, left, y);
            y += line;
        }

        foreach (string text in Lines(subject.Recording, subject.Channel, headline))
        {
            picture.Text(TextMeasure.Fit(text, subject.Scale.Words, room), subject.Scale.Words, left, y);
            y += TextMeasure.LineHeight(subject.Scale.Words);
        }

        return y + subject.Scale.Gap;
    }

    /// <summary>The lines below the title: why, and what to do about the finding that the title names.</summary>
    internal static string[] Lines(RecordingResult recording, ChannelResult channel, Headline headline)
    {
        if (headline.Look == VerdictLook.NotAssessed || headline.Named is not { } finding)
        {
            return headline.Cause.Length > 0 ? [headline.Cause] : [];
        }

        string cause = Advice.Cause(PlainText.Of(finding.Cause), Elsewhere(recording, channel, finding.Reason));
        return cause.Length > 0 ? [cause, Advice.WhatToDo(finding.Reason)] : [Advice.WhatToDo(finding.Reason)];
    }

    // Whether it is this site's or everybody's tells contact from surroundings.
    private static string Elsewhere(RecordingResult recording, ChannelResult channel, string reason)
    {
        if (recording.Channels.Length < 2 || string.Equals(reason, ReasonCode.Bridge, StringComparison.Ordinal))
        {
            return string.Empty;
        }

        string[] others = [.. recording.Channels.Where(other => other != channel && Shows(other, reason)).Select(other => PlainText.Of(other.Name))];
        return others.Length switch
        {
            0 => "no other channel shows it",
            <= 3 => $"also on {string.Join(", ", others)}",
            _ => $"also on {Quantities.Many(others.Length, "other channel")}",
        };
    }

    private static bool Shows(ChannelResult channel, string reason) => channel.Findings
        .Concat(channel.Cells.SelectMany(cell => cell.Findings))
        .Any(finding => finding.Grade > Grade.Pass && string.Equals(finding.Reason, reason, StringComparison.Ordinal));
}
