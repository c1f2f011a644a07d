using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>The decisions about one recording, and which of them holds for each channel and trial.</summary>
/// <remarks>
/// A decision about a channel during a trial comes before one about the trial, and that before one about the channel; among equals the later holds. One about a channel
/// makes its trials worse where they have none of their own, never better: a channel that can be scored after all does not mend its bad trials. Nothing flows from
/// trials to a channel. A blind decision comes after every other one that covers the trial.
/// </remarks>
public sealed class RecordingDecisions
{
    private readonly Dictionary<(string? Channel, int? Trial), StatedDecision> _inForce = [];

    /// <summary>Takes decisions with their states.</summary>
    /// <param name="all">In the order of the ledger.</param>
    public RecordingDecisions(ImmutableArray<StatedDecision> all)
    {
        All = all;
        foreach (StatedDecision one in all.Where(one => one.State == DecisionState.InForce))
        {
            _inForce[(one.Decision.Channel, one.Decision.Trial?.Number)] = one;
        }
    }

    /// <summary>Every decision about the recording in the order of the ledger, without the lines that withdraw.</summary>
    public ImmutableArray<StatedDecision> All { get; }

    /// <summary>What to tell a person: decisions that are stale, or hold although what is computed has changed.</summary>
    public ImmutableArray<Warning> Warnings =>
    [
        .. All.Where(one => one.IsFlagged).Select(one => new Warning(
            Ledger.FileName,
            FormattableString.Invariant($"line {one.Decision.Number}"),
            $"{OneLine.Of(one.Decision.Recording ?? string.Empty)}, {one.Decision.Subject}: "
                + (one.State == DecisionState.Stale ? $"not applied: {one.Note}; decide again, or withdraw it" : $"holds, but {one.Note}; look again"))),
    ];

    /// <summary>How many are in a state.</summary>
    public int Count(DecisionState state) => All.Count(one => one.State == state);

    /// <summary>The decision that holds for a channel itself; null when the computed verdict does.</summary>
    public StatedDecision? OfChannel(string channel) => _inForce.GetValueOrDefault((channel, null));

    /// <summary>The decision that holds for a channel during a trial; null when the computed verdict does.</summary>
    /// <param name="channel">The channel's name.</param>
    /// <param name="trial">The trial's number.</param>
    /// <param name="computed">The computed verdict.</param>
    public StatedDecision? OfTrial(string channel, int trial, Grade computed)
    {
        StatedDecision? whole = OfChannel(channel);
        StatedDecision?[] covering =
        [
            _inForce.GetValueOrDefault((channel, trial)),
            _inForce.GetValueOrDefault((null, trial)),
            whole?.Decision.Verdict > computed ? whole : null,
        ];
        return covering.FirstOrDefault(one => one is { Decision.Blind: false })
            ?? covering.FirstOrDefault(one => one is not null && !(whole is { Decision.Blind: false } && whole.Decision.Verdict > one.Decision.Verdict));
    }
}
