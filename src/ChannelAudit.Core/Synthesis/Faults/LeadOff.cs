using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A lead that has come off: the input floats and shows its surroundings in place of the muscle.</summary>
/// <remarks>Everything that came over the lead is gone, what faults named before this one have added included.</remarks>
/// <param name="Site">The site.</param>
public sealed record LeadOff(string Site) : Fault
{
    /// <summary>Whether the input's own current drives the amplifier to its upper rail, so that nothing else shows.</summary>
    public bool AtRail { get; init; }

    /// <summary>Mains that the open lead catches, in µV rms.</summary>
    public double MainsUv { get; init; } = 200;

    /// <summary>Noise of the open input in µV rms in the band of 20 to 450 Hz.</summary>
    public double NoiseUv { get; init; } = 30;

    /// <summary>Mains frequency.</summary>
    public double Hz { get; init; } = 50;

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        Truth silent = TruthOf(made, ReasonCode.WeakResponse, [Site], "amplitude_gain", 0, "1");
        return AtRail
            ? [.. RailCount.Truths(made, this, Site, int.MinValue, made.HighestCodeOf(Site)), silent]
            :
            [
                TruthOf(made, ReasonCode.LineNoise, [Site], "line_rms", MainsUv, "uV"),
                TruthOf(made, ReasonCode.NoiseFloor, [Site], "rest_rms", NoiseUv, "uV"),
                silent,
            ];
    }

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] open = new double[path.Plan.Length];
        ElectrodeStage.AddNoise(path, "open:" + Site, NoiseUv, open);
        new Oscillation(Hz, MainsUv, [1], WanderHz: 0).AddTo(open, span, path.Plan.Rate.Value);
        span.In(open).CopyTo(span.In(path.Site(Site).Input));
    }

    internal override void LimitAmplifier(SignalPath path)
    {
        if (AtRail)
        {
            // Beyond any converter's range, whatever its limits are.
            path.Plan.SamplesOf(Span).In(path.Site(Site).Input).Fill(double.PositiveInfinity);
        }
    }
}
