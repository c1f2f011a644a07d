using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>Counts usable trials by condition.</summary>
/// <remarks>Only trials that are scored count: rest and tasks are not conditions. Conditions come by ordinal order of their label,
/// trials without a label last. A condition that the protocol expects and no trial has counts with none.</remarks>
public static class ConditionCounts
{
    /// <summary>The counts of a recording: channels in file order, then conditions. Empty when no trial is scored.</summary>
    public static ImmutableArray<ConditionCount> Of(RecordingResult recording)
    {
        ImmutableDictionary<int, string> conditionOfTrial = recording.Trials
            .Where(trial => trial.Role == TrialRole.Scored)
            .ToImmutableDictionary(trial => trial.Number, trial => trial.Label ?? string.Empty);
        string[] conditions = [.. conditionOfTrial.Values
            .Concat(recording.ExpectedConditions)
            .Distinct(StringComparer.Ordinal)
            .OrderBy(condition => condition.Length == 0)
            .ThenBy(condition => condition, StringComparer.Ordinal)];

        return [.. recording.Channels.SelectMany(channel => conditions.Select(condition => Count(
            recording,
            channel,
            condition,
            [.. channel.Cells.Where(cell => string.Equals(conditionOfTrial.GetValueOrDefault(cell.Trial), condition, StringComparison.Ordinal))])))];
    }

    private static ConditionCount Count(RecordingResult recording, ChannelResult channel, string condition, CellResult[] cells) => new(
        channel.Name,
        condition.Length == 0 ? null : condition,
        cells.Count(cell => cell.Verdict == Grade.Pass),
        cells.Count(cell => cell.Verdict == Grade.Questionable),
        cells.Count(cell => cell.Verdict == Grade.Reject),
        cells.Count(cell => FinalVerdict.OfTrial(recording, channel, cell) != Grade.Reject),
        recording.MinimumTrials);
}
