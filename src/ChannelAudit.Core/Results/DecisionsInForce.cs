using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Segments;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Results;

/// <summary>Holds the ledger against a result: which decisions are in force, which were about other data.</summary>
public static class DecisionsInForce
{
    /// <summary>The result with the decisions about it; as it is when there are none.</summary>
    /// <param name="recording">A computed result.</param>
    /// <param name="ledger">The decisions of the audit.</param>
    /// <param name="criteriaSha256">SHA-256 of the limits in force now.</param>
    public static RecordingResult With(this RecordingResult recording, Ledger ledger, string criteriaSha256)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(ledger);
        Decision[] about = [.. ledger.About(recording.Id)];
        return recording with { Decisions = about.Length == 0 ? null : Of(about, ledger, recording, criteriaSha256) };
    }

    private static RecordingDecisions Of(Decision[] about, Ledger ledger, RecordingResult recording, string criteriaSha256)
    {
        string?[] stale = [.. about.Select(decision => StaleCause(decision, recording))];
        bool[] stands = [.. about.Select((decision, i) => stale[i] is null && ledger.WithdrawnBy(decision.Number) is null)];
        Dictionary<(string? Channel, int? Trial), Decision> holding = about.Where((_, i) => stands[i])
            .GroupBy(Subject)
            .ToDictionary(group => group.Key, Holding);
        ImmutableArray<StatedDecision>.Builder all = ImmutableArray.CreateBuilder<StatedDecision>(about.Length);
        for (int i = 0; i < about.Length; i++)
        {
            Decision decision = about[i];
            all.Add(ledger.WithdrawnBy(decision.Number) is { } by ? new StatedDecision(decision, DecisionState.Withdrawn, FormattableString.Invariant($"by {by}"))
                : stale[i] is { } cause ? new StatedDecision(decision, DecisionState.Stale, cause, IsFlagged: true)
                : holding[Subject(decision)] is var other && !ReferenceEquals(other, decision) ? new StatedDecision(decision, DecisionState.Superseded, FormattableString.Invariant($"by {other.Number}"))
                : InForce(decision, recording, criteriaSha256));
        }

        return new RecordingDecisions(all.MoveToImmutable());
    }

    // A blind decision never takes the place of one that was made with everything in view: it counts for the agreement of raters, and where nobody else decided.
    private static Decision Holding(IEnumerable<Decision> alike) => alike.OrderBy(one => !one.Blind).ThenBy(one => one.Number).Last();

    private static (string? Channel, int? Trial) Subject(Decision decision) => (decision.Channel, decision.Trial?.Number);

    private static string? StaleCause(Decision decision, RecordingResult recording)
    {
        if (!string.Equals(decision.RecordingSha256, recording.Sha256, StringComparison.Ordinal))
        {
            return "the recording has changed since (another SHA-256)";
        }

        if (decision.Channel is { } channel && !recording.Channels.Any(one => string.Equals(one.Name, channel, StringComparison.Ordinal)))
        {
            return $"there is no channel '{OneLine.Of(channel)}' any more";
        }

        return decision.Trial is { } trial ? TrialCause(trial, recording.Trials.FirstOrDefault(one => one.Number == trial.Number)) : null;
    }

    private static string? TrialCause(DecidedTrial then, Trial? now)
    {
        if (now is null)
        {
            return FormattableString.Invariant($"there is no trial {then.Number} any more");
        }

        string? change = then.OnsetS != now.OnsetS ? FormattableString.Invariant($"onset {now.OnsetS:0.######} s instead of {then.OnsetS:0.######} s")
            : then.DurationS != now.DurationS ? FormattableString.Invariant($"duration {now.DurationS:0.######} s instead of {then.DurationS:0.######} s")
            : string.Equals(then.Label, now.Label, StringComparison.Ordinal) ? null
            : $"{Named(now.Label)} instead of {Named(then.Label)}";
        return change is null ? null : FormattableString.Invariant($"trial {then.Number} is another one now: {change}");
    }

    private static string Named(string? label) => label is null ? "no label" : $"label '{OneLine.Of(label)}'";

    private static StatedDecision InForce(Decision decision, RecordingResult recording, string criteriaSha256)
    {
        string[] changes = [.. decision.Computed.Select(then => Change(then, decision, recording)).OfType<string>()];
        bool hasOtherCriteria = !string.Equals(decision.CriteriaSha256, criteriaSha256, StringComparison.Ordinal);
        string note = string.Join("; ", hasOtherCriteria ? [.. changes, "other criteria were in force when it was decided"] : changes);
        return new StatedDecision(decision, DecisionState.InForce, note, IsFlagged: changes.Length > 0);
    }

    private static string? Change(ComputedVerdict then, Decision decision, RecordingResult recording)
    {
        ChannelResult? channel = recording.Channels.FirstOrDefault(one => string.Equals(one.Name, then.Channel, StringComparison.Ordinal));
        CellResult? cell = channel?.Cells.FirstOrDefault(one => one.Trial == decision.Trial?.Number);
        (Grade Verdict, ImmutableArray<string> Reasons)? now = decision.Trial is null
            ? channel is null ? null : (channel.Verdict, channel.Reasons)
            : cell is null ? null : (cell.Verdict, cell.Reasons);
        string of = decision.Channel is null ? $" of {OneLine.Of(then.Channel)}" : string.Empty;
        return now is not { } known || (known.Verdict == then.Verdict && known.Reasons.ToHashSet(StringComparer.Ordinal).SetEquals(then.Reasons))
            ? null
            : $"the computed verdict{of} was {Words(then.Verdict, then.Reasons)} when it was decided and is {Words(known.Verdict, known.Reasons)} now";
    }

    private static string Words(Grade verdict, ImmutableArray<string> reasons) =>
        reasons.IsEmpty ? GradeCode.Of(verdict) : $"{GradeCode.Of(verdict)} ({string.Join(", ", reasons.Select(OneLine.Of))})";
}
