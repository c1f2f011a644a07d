using System.Globalization;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary><c>methods-paragraph.md</c>: what a paper has to say of the audit, with the numbers filled in.</summary>
/// <remarks>Every number in it stands in <see cref="MethodsJson"/> too.</remarks>
public static class MethodsText
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "methods-paragraph.md";

    private const double SecondsAnHour = 3600;

    /// <summary>The file as UTF-8 bytes.</summary>
    public static byte[] Render(MethodsTally tally, MethodsOrigin origin)
    {
        ArgumentNullException.ThrowIfNull(tally);
        ArgumentNullException.ThrowIfNull(origin);
        StringBuilder text = new();
        text.Append("# Signal quality\n\n");
        Paragraph(text, Data(tally));
        Paragraph(text, Rules(tally, origin));
        Paragraph(text, Outcome(tally));
        if (tally.Fairness is { } fairness)
        {
            Paragraph(text, FairnessSentences.Of(fairness));
        }

        Paragraph(text, NotAssessed(tally));
        Paragraph(text, Repeat(origin));
        MethodsTables.Append(text, tally, origin);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Paragraph(StringBuilder text, IEnumerable<string> sentences) => text.AppendJoin(' ', sentences).Append("\n\n");

    private static IEnumerable<string> Data(MethodsTally tally)
    {
        yield return $"We audited {Quantities.Many(tally.Recordings.Count, "recording")} of {Hours(tally.Recordings.Sum)} in all"
            + $" (shortest {Seconds(tally.Recordings.Least)}, longest {Seconds(tally.Recordings.Most)}), stored as {Counted(tally.Formats)}"
            + " [say here: participants, sites, electrodes, amplifier].";
        if (tally.Unread > 0)
        {
            yield return $"{Quantities.Many(tally.Unread, "recording")} could not be read and {(tally.Unread == 1 ? "is" : "are")} in no other number here.";
        }

        yield return $"They hold {Quantities.Many(tally.Channels.Total, "channel")} of surface EMG, sampled at {Counted(tally.Rates)}."
            + (tally.SkippedChannels > 0 ? $" {Quantities.Many(tally.SkippedChannels, "more channel")} (triggers and the like) did not take part." : string.Empty);
        yield return $"Of {Quantities.Many(tally.ScoredTrials.Count + tally.RestTrials + tally.TaskTrials, "trial")},"
            + $" {tally.ScoredTrials.Count.Plain()} {(tally.ScoredTrials.Count == 1 ? "is" : "are")} to be scored"
            + (tally.ScoredTrials.Count > 0 ? $" (window {Range(tally.ScoredTrials)})" : string.Empty)
            + $", {tally.RestTrials.Plain()} {(tally.RestTrials == 1 ? "is" : "are")} rest and {tally.TaskTrials.Plain()} instructed contractions;"
            + $" trials came from {Counted(tally.TrialSources)}.";
        if (!tally.Odd.IsEmpty)
        {
            string kinds = string.Join(", ", tally.OddByKind.Select(entry => $"{StudyWords.Kind(entry.Kind)}: {entry.Recordings.Plain()}"));
            yield return $"{Quantities.Many(tally.OddRecordings, "recording")} {(tally.OddRecordings == 1 ? "was" : "were")} named as other than the rest of the study"
                + $" ({kinds}; this changed no verdict) [say here what was done about {(tally.OddRecordings == 1 ? "it" : "them")}].";
        }
    }

    private static IEnumerable<string> Rules(MethodsTally tally, MethodsOrigin origin)
    {
        yield return $"Signal quality was judged by rule with ChannelAudit {MarkdownText.Escape(origin.Version)}: a fixed policy turns measures and limits into"
            + " one verdict (pass, questionable or reject) for each channel and for each trial of each channel, without looking at condition labels.";
        yield return origin.Criteria.FileName is { } file
            ? $"Limits were the program's defaults with the differences in {MarkdownText.Escape(file)}; the limits table below has all of them with their sources."
            : "Limits were the program's defaults; the limits table below has all of them with their sources.";
        yield return Frozen(origin.Criteria);
        yield return "Spectra are Welch averages of 1 s Hann segments with 50 % overlap;"
            + $" muscle activity was measured over {Bands(tally)} outside the windows of mains and harmonics, {Mains(tally)}.";
        if (tally.ScoredTrials.Count > 0 && tally.ScoredTrials.Least < 1)
        {
            yield return "In trials shorter than 1 s mains were estimated by a least-squares sine; below 0.2 s nothing spectral was measured.";
        }

        yield return Scoring(tally);
        yield return "A trial's verdict is the worst of its own findings and of those of its channel that cover it; a channel's is the worst of what holds for the"
            + " whole recording and of the share of its bad trials, and does not change its trials.";
        if (origin.Impedance.FileName is not null)
        {
            yield return "Readings of electrode impedance were graded apart and changed no verdict.";
        }
    }

    private static string Mains(MethodsTally tally) => (tally.Mains.Count, tally.MainsUnseen) switch
    {
        (_, 0) => Counted(tally.Mains),
        (0, var unseen) => Unseen(unseen),
        (_, var unseen) => $"{Counted(tally.Mains)}, {Unseen(unseen)}",
    };

    private static string Unseen(int recordings) => $"no mains seen (n = {recordings.Plain()})";

    private static string Frozen(AuditCriteria criteria) => criteria.Frozen switch
    {
        null => "The limits were not frozen beforehand [say here when they were fixed].",
        { IsUnchanged: true } frozen => $"They are the limits as frozen on {MarkdownText.Escape(frozen.Date)}, unchanged.",
        { } frozen => $"They were frozen on {MarkdownText.Escape(frozen.Date)} and changed since: {MarkdownText.Escape(string.Join("; ", frozen.Differences))} [say here why].",
    };

    private static string Scoring(MethodsTally tally)
    {
        const string judged = "Mains, narrow peaks, low frequencies and drift were judged on what the scoring filter leaves";
        string[] filters =
        [
            .. tally.ScoringFilters
                .Where(entry => entry.Key.Length > 0)
                .Select(entry => $"{MarkdownText.Escape(entry.Key)} (n = {entry.Value.Plain()})"),
        ];
        int without = tally.ScoringFilters.GetValueOrDefault(string.Empty);
        return (filters.Length, without) switch
        {
            (0, _) => "No scoring filter was stated: the samples were judged as they are stored.",
            (_, 0) => $"{judged}: {string.Join("; ", filters)}.",
            _ => $"{judged} ({string.Join("; ", filters)}); {Quantities.Many(without, "recording")} without one as stored.",
        };
    }

    private static IEnumerable<string> Outcome(MethodsTally tally)
    {
        yield return "Shares are given with 95 % intervals after Wilson (1927); trials are counted once a channel, and since trials of one recording are not independent,"
            + " the intervals describe and do not test.";
        if (tally.DecidedChannels.Total + tally.DecidedTrials.Total > 0)
        {
            yield return $"Persons decided over computed verdicts: of {Quantities.Many(tally.DecidedChannels.Total, "channel")} {Directions(tally.DecidedChannels)},"
                + $" of {Quantities.Many(tally.DecidedTrials.Total, "scored trial")} {Directions(tally.DecidedTrials)};"
                + " each decision is kept with reason, name and time in `decisions.jsonl` [say here who decided, on what, and whether conditions were known]."
                + " All numbers below are after these decisions.";
        }

        if (tally.StaleDecisions > 0)
        {
            yield return $"{Quantities.Many(tally.StaleDecisions, "decision")} {(tally.StaleDecisions == 1 ? "was" : "were")} not applied, because the data had changed since.";
        }

        yield return $"Excluded (final verdict reject) were {tally.Trials.Of(Grade.Reject)} scored trials and {tally.Channels.Of(Grade.Reject)} channels.";
        yield return $"Questionable were {tally.Trials.Of(Grade.Questionable)} scored trials and {tally.Channels.Of(Grade.Questionable)} channels;"
            + " [say here how they were treated: scored, left out, or both].";
        yield return $"Passed: {tally.Trials.Of(Grade.Pass)} scored trials and {tally.Channels.Of(Grade.Pass)} channels.";
        if (tally.TooFewTrials.Total > 0)
        {
            yield return $"Fewer usable trials than the study's minimum ({string.Join(" or ", tally.Minimums.Keys.Select(Quantities.Plain))}) were left in {tally.TooFewTrials} combinations of recording, channel and condition.";
        }
    }

    private static string Directions(DecisionTally tally) => $"{tally.Worse.Plain()} became worse, {tally.Better.Plain()} better and {tally.Same.Plain()} stayed";

    private static IEnumerable<string> NotAssessed(MethodsTally tally)
    {
        yield return $"Not everything could be judged everywhere: at least one question stayed open in {new Share(tally.TrialsWithGaps, tally.Trials.Total)} scored trials and"
            + $" {new Share(tally.ChannelsWithGaps, tally.Channels.Total)} channels (table below).";
        yield return "A question that stayed open lowers no verdict and is not evidence that the fault was absent.";
    }

    private static IEnumerable<string> Repeat(MethodsOrigin origin)
    {
        yield return $"The same recordings with the same version ({MarkdownText.Escape(origin.Version)}), criteria (SHA-256 `{origin.Criteria.Sha256}`)"
            + $" {Setup(origin.Setup)} give the same verdicts byte for byte; `audit.json` lists the SHA-256 of every recording.";
        if (origin.Impedance.FileName is not null)
        {
            yield return $"The impedance readings are those of {MarkdownText.Escape(origin.Impedance.FileName)} (SHA-256 `{origin.Impedance.Sha256}`).";
        }
    }

    private static string Setup(StoredInput setup) => setup.FileName is { } name
        ? $"and setup ({MarkdownText.Escape(name)}, SHA-256 `{setup.Sha256}`)"
        : "and no setup file";

    private static string Bands(MethodsTally tally) => tally.Bands.Count == 0 ? "no band" : string.Join("; ", tally.Bands.Select(entry =>
        $"{Quantities.Short(entry.Key.FromHz)} to {Quantities.Short(entry.Key.ToHz)} Hz (n = {entry.Value.Plain()} channels)"));

    private static string Counted(SortedDictionary<string, int> counts) => counts.Count == 0
        ? "none"
        : string.Join(", ", counts.Select(entry => $"{MarkdownText.Escape(entry.Key)} (n = {entry.Value.Plain()})"));

    private static string Counted(SortedDictionary<double, int> counts) => counts.Count == 0
        ? "none"
        : string.Join(", ", counts.Select(entry => $"{Quantities.Short(entry.Key)} Hz (n = {entry.Value.Plain()})"));

    private static string Range(SpreadTally spread) => spread.Least == spread.Most
        ? Seconds(spread.Least)
        : $"{Quantities.Short(spread.Least)} to {Seconds(spread.Most)}";

    private static string Seconds(double seconds) => $"{Quantities.Short(seconds)} s";

    private static string Hours(double seconds) => seconds >= SecondsAnHour
        ? string.Create(CultureInfo.InvariantCulture, $"{seconds / SecondsAnHour:F1} h")
        : Seconds(seconds);
}
