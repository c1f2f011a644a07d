using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>An amplifier that gives way before its limit: peaks are rounded off rather than cut, x/√(1 + (x/rail)²).</summary>
/// <param name="Site">The site.</param>
/// <param name="RailUv">The value that is approached and never reached, in µV.</param>
public sealed record SoftRail(string Site, double RailUv) : Fault
{
    /// <inheritdoc/>
    /// <remarks>Nothing that the stored samples could show: that is the point of it.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void LimitAmplifier(SignalPath path)
    {
        foreach (ref double value in path.Plan.SamplesOf(Span).In(path.Site(Site).Input))
        {
            double part = value / RailUv;
            value /= Math.Sqrt(1 + (part * part));
        }
    }
}
