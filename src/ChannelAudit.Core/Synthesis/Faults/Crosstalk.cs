using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>The neighbour's muscle seen through tissue: no fault, but easily taken for a bridge.</summary>
/// <param name="FromSite">The muscle that is seen.</param>
/// <param name="ToSite">The site that sees it too.</param>
/// <param name="Share">Amplitude at the second site over that at the first; up to 0.25 on the face (methods 1.2).</param>
public sealed record Crosstalk(string FromSite, string ToSite, double Share) : Fault
{
    /// <summary>Cut-off of the tissue between the sites in Hz: high frequencies die on the way.</summary>
    public double TissueLowpassHz { get; init; } = 150;

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, "crosstalk", [FromSite, ToSite], "gain_ab", Share, "1")];

    internal override void AddSources(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] seen = span.In(path.Site(FromSite).Muscle).ToArray();
        double before = Power(seen);

        // Tissue conducts without delay, and a filter that runs one way only would delay: so there and back.
        NoiseBand tissue = new(0, TissueLowpassHz);
        ShapedNoise.Shape(tissue, path.Plan.Rate.Value, seen);
        Array.Reverse(seen);
        ShapedNoise.Shape(tissue, path.Plan.Rate.Value, seen);
        Array.Reverse(seen);
        double scale = Share * Math.Sqrt(before / Math.Max(Power(seen), double.Epsilon));
        SiteSignals target = path.Site(ToSite);
        for (int i = 0; i < seen.Length; i++)
        {
            target.AddAcross(span.From + i, scale * seen[i]);
        }
    }

    private static double Power(double[] signal)
    {
        double power = 0;
        foreach (double value in signal)
        {
            power += value * value;
        }

        return power;
    }
}
