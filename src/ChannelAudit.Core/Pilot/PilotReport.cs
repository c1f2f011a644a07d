using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Results;

namespace ChannelAudit.Pilot;

/// <summary>The answer to a technician: can we start, and if not, what to do first.</summary>
public sealed record PilotReport
{
    /// <summary>The audit it rests on.</summary>
    public required RecordingResult Recording { get; init; }

    /// <summary>The answer.</summary>
    public required PilotAnswer Answer { get; init; }

    /// <summary>The sites in file order.</summary>
    public required ImmutableArray<PilotSite> Sites { get; init; }

    /// <summary>Pairs of sites that are joined or may be.</summary>
    public ImmutableArray<PilotJoint> Joints { get; init; } = [];

    /// <summary>What to do next, first things first, five at most.</summary>
    public required ImmutableArray<PilotStep> Next { get; init; }

    /// <summary>What could not be checked, a sentence each; the answer holds only as far as these allow.</summary>
    public ImmutableArray<string> NotChecked { get; init; } = [];

    /// <summary>What taps on lead wires showed; null when the recording has none.</summary>
    public TapReport? Taps { get; init; }

    /// <summary>
    /// By how many seconds all task marks seem late against the signal, early when negative; null when they seem in place. Nothing is moved for it.
    /// </summary>
    public double? MarksLateS { get; init; }

    /// <summary>The impedance readings; null when none were given.</summary>
    public ImpedanceReport? Readings => Recording.Impedance;
}
