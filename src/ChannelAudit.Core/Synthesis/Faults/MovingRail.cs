using System.Collections.Immutable;
using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>An amplifier that saturates in front of a high-pass: each plateau decays from where it was, so that the rail moves with the baseline. Always the whole recording.</summary>
/// <param name="Site">The site.</param>
/// <param name="RailUv">Distance of the rail from zero on both sides in µV, before the high-pass.</param>
/// <param name="HighpassHz">The high-pass behind it, Butterworth of order 2.</param>
public sealed record MovingRail(string Site, double RailUv, double HighpassHz) : Fault
{
    /// <inheritdoc/>
    /// <remarks>Nothing that the stored samples could show: that is the point of it.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void LimitAmplifier(SignalPath path)
    {
        double[] input = path.Site(Site).Input;
        double settled = input.Length > 0 ? Math.Clamp(input[0], -RailUv, RailUv) : 0;
        for (int i = 0; i < input.Length; i++)
        {
            input[i] = Math.Clamp(input[i], -RailUv, RailUv) - settled;
        }

        Butterworth.HighPass(HighpassHz, path.Plan.Rate.Value).FilterInPlace(input);
    }
}
