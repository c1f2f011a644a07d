using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A remote muscle (chewing, swallowing) that several sites see at once: no fault, but alike in all pairs.</summary>
/// <param name="RmsUv">Amplitude of the remote source in µV rms.</param>
/// <param name="Shares">How each site sees it.</param>
public sealed record CommonSource(double RmsUv, ImmutableArray<RemoteShare> Shares) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
    [
        TruthOf(
            made, "common-source", [.. Shares.Select(share => share.Site)], "emg_rms", RmsUv * Shares.Max(share => Math.Abs(share.Across)), "uV"),
    ];

    internal override void AddSources(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] remote = new double[span.Length];
        ShapedNoise.Fill(NoiseStream.Of(path.Plan.Seed, "remote"), new NoiseBand(30, 150), path.Plan.Rate.Value, remote);
        foreach (RemoteShare share in Shares)
        {
            SiteSignals site = path.Site(share.Site);
            for (int i = 0; i < remote.Length; i++)
            {
                double seen = RmsUv * remote[i];
                site.First[span.From + i] += seen * (share.Potential + (share.Across / 2));
                site.Second[span.From + i] += seen * (share.Potential - (share.Across / 2));
            }
        }
    }
}
