using System.Collections.Immutable;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Light taps on a lead wire: its electrode's potential swings for a moment, and what gel joins with it takes part.</summary>
/// <remarks>Each tap is one damped swing of 6 Hz over a third of a second, in turn up and down; they are spread evenly over the stretch.</remarks>
/// <param name="Wire">The electrode whose wire is tapped.</param>
/// <param name="HeightUv">About the height of the first swing in µV.</param>
/// <param name="Count">How many.</param>
public sealed record LeadTaps(Electrode Wire, double HeightUv, int Count = 3) : Fault
{
    private const double Hz = 6;
    private const double LastsS = 0.35;

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void AddSources(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        SiteSignals site = path.Site(Wire.Site);
        Span<double> potential = span.In(Wire.IsSecond ? site.Second : site.First);
        double rate = path.Plan.Rate.Value;
        for (int tap = 0; tap < Count; tap++)
        {
            int start = (int)((tap + 0.5) / Count * potential.Length);
            double height = tap % 2 == 0 ? HeightUv : -HeightUv;
            for (int i = 0; i < LastsS * rate && start + i < potential.Length; i++)
            {
                double left = 1 - (i / (LastsS * rate));
                potential[start + i] += height * left * left * RepeatableMath.SinCosTurns(Hz * i / rate).Sin;
            }
        }
    }
}
