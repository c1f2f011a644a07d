using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>What to do about the reasons that occur, with the cautions that belong to it.</summary>
internal static class AdviceSection
{
    /// <summary>Writes the section; nothing when no reason occurs.</summary>
    public static void Write(HtmlText html, ImmutableArray<RecordingResult> recordings)
    {
        HashSet<string> seen = [.. recordings.SelectMany(Codes)];
        ReasonWord[] words = [.. ReasonWords.All.Where(word => seen.Contains(word.Code))];
        if (words.Length == 0)
        {
            return;
        }

        html.Line("<section>").ElementLine("h2", "Before the next recording, and when scoring this one").Line("<dl>");
        foreach (ReasonWord word in words)
        {
            html.Element("dt", char.ToUpperInvariant(word.Name[0]) + word.Name[1..]).ElementLine("dd", word.WhatToDo);
            if (ScoringAdvice.For(word.Code) is { } scoring)
            {
                html.ElementLine("dd", "When scoring: " + scoring);
            }
        }

        html.Line("</dl>");
        if (words.Any(word => word.TouchesSkin))
        {
            html.ElementLine("p class=\"caution\"", ReasonWords.Caution);
        }

        html.Line("</section>");
    }

    private static IEnumerable<string> Codes(RecordingResult recording) => recording.Channels
        .SelectMany(channel => channel.Reasons.Concat(channel.Cells.SelectMany(cell => cell.Reasons)))
        .Concat(recording.Information.Select(finding => finding.Reason).Where(reason => !ReasonCode.All.Contains(reason, StringComparer.Ordinal)));
}
