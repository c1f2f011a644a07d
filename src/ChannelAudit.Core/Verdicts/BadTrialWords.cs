using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Verdicts;

/// <summary>The share of bad trials in a sentence.</summary>
internal static class BadTrialWords
{
    /// <summary><c>9 of 29 trials are rejected, mostly for clipping</c>.</summary>
    /// <param name="share">What the share makes of the channel.</param>
    /// <param name="bad">Trials that are rejected; for a questionable channel those that did not pass.</param>
    /// <param name="all">All trials.</param>
    /// <param name="commonest">The reason codes that the bad ones have most often; may be empty.</param>
    public static string Of(Grade share, int bad, int all, ImmutableArray<string> commonest)
    {
        string judged = (share, bad) switch
        {
            (Grade.Reject, 1) => "is rejected",
            (Grade.Reject, _) => "are rejected",
            _ => "did not pass",
        };
        string reasons = commonest.IsEmpty ? string.Empty : $", {(bad == 1 ? "for" : "mostly for")} {string.Join(", ", commonest)}";
        return FormattableString.Invariant($"{bad} of {all} {(all == 1 ? "trial" : "trials")} {judged}{reasons}");
    }
}
