using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>What a reader should know first about a run over several recordings, in a few sentences.</summary>
public static class StudyLead
{
    /// <summary>The sentences.</summary>
    /// <param name="digest">The run.</param>
    /// <param name="reasons">Its reasons, the commonest first.</param>
    public static ImmutableArray<string> Of(RunDigest digest, ImmutableArray<StudyReason> reasons)
    {
        List<string> sentences = [Recordings(digest), Trials(digest)];
        if (!reasons.IsEmpty)
        {
            StudyReason first = reasons[0];
            string size = $"{Quantities.Many(first.Trials, "trial")} in {Quantities.Many(first.Recordings, "recording")}";
            sentences.Add($"The commonest reason is {ReasonWords.For(first.Reason).Name}: {size}.");
        }

        int lacking = digest.Recordings.Count(recording => !recording.TooFew.IsEmpty);
        if (lacking > 0)
        {
            sentences.Add($"In {Quantities.Many(lacking, "recording")} a condition has fewer usable trials than it needs.");
        }

        return [.. sentences];
    }

    private static string Recordings(RunDigest digest)
    {
        int all = digest.Recordings.Length;
        int rejected = digest.Recordings.Count(recording => recording.Worst == Grade.Reject);
        int questionable = digest.Recordings.Count(recording => recording.Worst == Grade.Questionable);
        int passed = all - rejected - questionable;
        if (all == 0 || passed == all)
        {
            return all == 0 ? "No recording could be audited." : $"Every channel passes in each of {Quantities.Many(all, "recording")}.";
        }

        string[] parts =
        [
            .. rejected > 0 ? new[] { $"{rejected.Plain()} {Have(rejected)} a rejected channel" } : [],
            .. questionable > 0 ? new[] { $"{questionable.Plain()} {Have(questionable)} a questionable channel and none rejected" } : [],
            passed > 0 ? $"in {passed.Plain()} every channel passes" : "in none every channel passes",
        ];
        return $"Of {Quantities.Many(all, "recording")}, {string.Join("; ", parts)}.";
    }

    private static string Trials(RunDigest digest) => digest.Trials.Total == 0
        ? "There are no trials."
        : $"Trials, counted once a channel: {RunSummary.InWords(digest.Trials)}.";

    private static string Have(int count) => count == 1 ? "has" : "have";
}
