using System.Globalization;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>What a few words add to the name of a reason: that a joint is only suspected, or what is wrong with an input.</summary>
internal static class ReasonNotes
{
    /// <summary>Of a joint that the signal alone does not prove.</summary>
    public const string Suspected = "suspected";

    private const int Longest = 40;

    /// <summary>The words for a reason of a channel; null when its name says it all.</summary>
    public static string? Of(ChannelResult channel, string reason) => reason switch
    {
        ReasonCode.Bridge => ReasonPhrase.Worst(ReasonPhrase.FindingsOf(channel, reason))?.Grade == Grade.Questionable ? Suspected : null,
        ReasonCode.UnusableInput => Input(channel),
        _ => null,
    };

    // A finding says "the signal is rectified", "the unit looks wrong: ..."; without one something was missing to judge by.
    private static string? Input(ChannelResult channel)
    {
        string? seen = ReasonPhrase.FindingsOf(channel, ReasonCode.UnusableInput).FirstOrDefault(finding => finding.Evidence.IsEmpty)?.Seen
            ?? channel.NotAssessed.Concat(channel.Cells.SelectMany(cell => cell.NotAssessed))
                .FirstOrDefault(gap => string.Equals(gap.Reason, ReasonCode.UnusableInput, StringComparison.Ordinal))?.Cause;
        if (seen is null)
        {
            return null;
        }

        string words = Without(Without(Without(seen.Split(':')[0], "the signal is "), "the input is "), "the ");
        return new StringInfo(words).LengthInTextElements <= Longest ? words : null;
    }

    private static string Without(string text, string start) => text.StartsWith(start, StringComparison.Ordinal) ? text[start.Length..] : text;
}
