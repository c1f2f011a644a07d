using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Comparing;

/// <summary>Holds two results of one recording against each other.</summary>
/// <remarks>Channels are matched by their label in the file, trials by onset, duration and label: another setup may name and number them differently.</remarks>
internal sealed class RecordingComparison
{
    private readonly RecordingResult _a;
    private readonly RecordingResult _b;
    private readonly AuditCriteria _criteriaA;
    private readonly AuditCriteria _criteriaB;
    private readonly ImmutableArray<(Trial? A, Trial? B)> _trials;

    /// <summary>Matches the trials of two results.</summary>
    public RecordingComparison(RecordingResult a, RecordingResult b, AuditCriteria criteriaA, AuditCriteria criteriaB)
    {
        _a = a;
        _b = b;
        _criteriaA = criteriaA;
        _criteriaB = criteriaB;
        _trials = TrialMatch.Of(a.Trials, b.Trials);
    }

    /// <summary>What differs: channels in file order, each with the whole channel first; verdicts of all are counted.</summary>
    public ImmutableArray<VerdictChange> Changes(VerdictCrossing channels, VerdictCrossing trials)
    {
        ImmutableArray<VerdictChange>.Builder changes = ImmutableArray.CreateBuilder<VerdictChange>();
        Dictionary<string, ChannelResult> ofB = _b.Channels
            .DistinctBy(channel => channel.Label, StringComparer.Ordinal)
            .ToDictionary(channel => channel.Label, StringComparer.Ordinal);
        foreach (ChannelResult channel in _a.Channels)
        {
            ofB.Remove(channel.Label, out ChannelResult? other);
            Compare(channel, other, channels, trials, changes);
        }

        foreach (ChannelResult channel in _b.Channels.Where(channel => ofB.ContainsKey(channel.Label)))
        {
            Compare(null, channel, channels, trials, changes);
        }

        return changes.ToImmutable();
    }

    private void Compare(
        ChannelResult? a, ChannelResult? b, VerdictCrossing channels, VerdictCrossing trials, ImmutableArray<VerdictChange>.Builder changes)
    {
        ChannelResult known = b ?? a!;
        VerdictChange place = new() { Recording = _a.Id, Label = known.Label, Channel = known.Name, OfTrials = _trials.Length };
        Add(place, a is null ? null : JudgedPart.Of(a), b is null ? null : JudgedPart.Of(b), channels, changes);
        Dictionary<int, CellResult> cellsA = Cells(a);
        Dictionary<int, CellResult> cellsB = Cells(b);
        foreach ((Trial? trialA, Trial? trialB) in _trials)
        {
            Trial trial = trialB ?? trialA!;
            Add(
                place with { Trial = trial.Number, Condition = trial.Label, OnsetS = (double)trial.OnsetS },
                Part(a, trialA, cellsA),
                Part(b, trialB, cellsB),
                trials,
                changes);
        }
    }

    private static Dictionary<int, CellResult> Cells(ChannelResult? channel) =>
        channel?.Cells.DistinctBy(cell => cell.Trial).ToDictionary(cell => cell.Trial) ?? [];

    private static JudgedPart? Part(ChannelResult? channel, Trial? trial, Dictionary<int, CellResult> cells) =>
        channel is not null && trial is not null && cells.TryGetValue(trial.Number, out CellResult? cell) ? JudgedPart.Of(channel, cell, trial) : null;

    private void Add(VerdictChange place, JudgedPart? a, JudgedPart? b, VerdictCrossing crossing, ImmutableArray<VerdictChange>.Builder changes)
    {
        if (a is not null && b is not null)
        {
            crossing.Add(a.Verdict, b.Verdict);
            if (a.SaysTheSameAs(b))
            {
                return;
            }
        }
        else if (a is null && b is null)
        {
            return;
        }

        changes.Add(place with
        {
            VerdictA = a?.Verdict,
            VerdictB = b?.Verdict,
            ReasonsGone = Without(a?.Reasons, b?.Reasons),
            ReasonsNew = Without(b?.Reasons, a?.Reasons),
            NotAssessedGone = Without(a?.NotAssessed, b?.NotAssessed),
            NotAssessedNew = Without(b?.NotAssessed, a?.NotAssessed),
            Measure = a is null || b is null ? null : DecidingMeasure.Of(a, b, _criteriaA, _criteriaB),
        });
    }

    private static ImmutableArray<string> Without(ImmutableArray<string>? codes, ImmutableArray<string>? others) =>
        [.. (codes ?? []).Except(others ?? [], StringComparer.Ordinal)];
}
