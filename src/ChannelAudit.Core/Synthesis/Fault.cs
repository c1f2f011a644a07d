using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>Something wrong with a made recording, of known size; each step of the signal's way can be disturbed.</summary>
/// <remarks>
/// A fault overrides the steps it disturbs, and no other; they run in this order: levels, sources, electrodes (by the
/// bridges), inputs, amplifier, codes, storage.
/// </remarks>
public abstract record Fault
{
    /// <summary>Where it is present.</summary>
    public FaultSpan Span { get; init; } = FaultSpan.Whole;

    /// <summary>What an audit should find, once the recording has been made.</summary>
    /// <param name="made">The finished recording.</param>
    public abstract ImmutableArray<Truth> TruthsIn(MadeRecording made);

    /// <summary>The electrical joint that this fault makes between electrodes, or none.</summary>
    internal virtual ImmutableArray<ElectrodeJoint> Joints => [];

    /// <summary>Changes how active the muscles are.</summary>
    internal virtual void ShapeLevels(SignalPath path)
    {
    }

    /// <summary>Adds to what the skin offers at each site.</summary>
    internal virtual void AddSources(SignalPath path)
    {
    }

    /// <summary>Adds to the voltage between two electrodes.</summary>
    internal virtual void AddInput(SignalPath path)
    {
    }

    /// <summary>Limits the amplifier's output or the converter's range.</summary>
    internal virtual void LimitAmplifier(SignalPath path)
    {
    }

    /// <summary>Changes stored codes.</summary>
    internal virtual void EditCodes(SignalPath path)
    {
    }

    /// <summary>Takes samples out of the file.</summary>
    internal virtual void LoseSamples(SignalPath path)
    {
    }

    /// <summary>One truth over this fault's own stretch.</summary>
    private protected Truth TruthOf(
        MadeRecording made, string reason, ImmutableArray<string> sites, string measure, double size, string unit) =>
        new(reason, sites, measure, size, unit, Span, made.Plan.TrialsIn(Span));
}
