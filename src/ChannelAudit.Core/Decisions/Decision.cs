using System.Collections.Immutable;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Decisions;

/// <summary>One line of the ledger: a person's verdict over the computed one, or the withdrawal of such a line.</summary>
/// <remarks>A draft becomes a line in <see cref="LedgerWriter"/>, which gives it its number, its time and its place in the chain.</remarks>
public sealed record Decision
{
    /// <summary>From 1 by line; 0 in a draft.</summary>
    public int Number { get; init; }

    /// <summary>The SHA-256 of the line before, or <see cref="LedgerChain.Start"/>; empty in a draft.</summary>
    public string Previous { get; init; } = string.Empty;

    /// <summary>When it was written, in whole seconds of UTC.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>Who decided.</summary>
    public required string By { get; init; }

    /// <summary>What the line does.</summary>
    public required DecisionAction Action { get; init; }

    /// <summary>The id of the recording; null in a withdrawal.</summary>
    public string? Recording { get; init; }

    /// <summary>The name of the channel; null for all channels of a trial, and in a withdrawal.</summary>
    public string? Channel { get; init; }

    /// <summary>The trial; null for the channel itself, and in a withdrawal.</summary>
    public DecidedTrial? Trial { get; init; }

    /// <summary>The person's verdict; null in a withdrawal.</summary>
    public Grade? Verdict { get; init; }

    /// <summary>Why, in the person's words.</summary>
    public required string Reason { get; init; }

    /// <summary>The number of the decision that is taken back; null unless this is a withdrawal.</summary>
    public int? Withdraws { get; init; }

    /// <summary>The computed verdicts that it stands over: one, or of a whole trial one a channel; empty in a withdrawal.</summary>
    public ImmutableArray<ComputedVerdict> Computed { get; init; } = [];

    /// <summary>SHA-256 of the recording's bytes; null in a withdrawal.</summary>
    public string? RecordingSha256 { get; init; }

    /// <summary>SHA-256 of the limits in force; null in a withdrawal.</summary>
    public string? CriteriaSha256 { get; init; }

    /// <summary>With what it was made: <c>decide</c> for the command line, <c>review</c> for the review page.</summary>
    public required string Origin { get; init; }

    /// <summary>Whether the computed verdict was hidden from the person.</summary>
    public bool Blind { get; init; }

    /// <summary>SHA-256 of the line up to this value; empty in a draft.</summary>
    public string Sha256 { get; init; } = string.Empty;

    /// <summary>What it is about within its recording, as one line: <c>cheek, trial 3 (smile)</c>.</summary>
    public string Subject
    {
        get
        {
            string label = Trial?.Label is { } known ? $" ({OneLine.Of(known)})" : string.Empty;
            string trial = Trial is null ? string.Empty : FormattableString.Invariant($"trial {Trial.Number}{label}");
            return Channel is null ? $"{trial}, all channels" : Trial is null ? OneLine.Of(Channel) : $"{OneLine.Of(Channel)}, {trial}";
        }
    }
}
