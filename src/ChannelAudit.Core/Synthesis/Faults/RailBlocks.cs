using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Blocks of samples held at a rail, as many as make a given share: clipping of exactly known size.</summary>
/// <param name="Site">The site.</param>
/// <param name="SharePercent">Share of the stretch's samples that are put at the rail, in %, rounded to whole blocks.</param>
/// <param name="RunSamples">Samples in each block.</param>
public sealed record RailBlocks(string Site, double SharePercent, int RunSamples) : Fault
{
    /// <summary>
    /// Height of a hidden rail in µV, above everything else in the channel, or it is no rail; null: the converter's upper rail.
    /// </summary>
    public double? RailUv { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        int rail = RailUv is { } hidden
            ? (int)Math.Round(hidden / made.Plan.Amplifier.StepUv)
            : made.HighestCodeOf(Site);
        return RailCount.Truths(made, this, Site, int.MinValue, rail);
    }

    internal override void EditCodes(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        SiteSignals signals = path.Site(Site);
        int rail = RailUv is { } hidden
            ? (int)Math.Round(hidden / path.Plan.Amplifier.StepUv)
            : signals.HighestCode!.Value;
        int blocks = (int)Math.Round(SharePercent / 100 * span.Length / RunSamples);
        for (int block = 0; block < blocks; block++)
        {
            // Evenly spread, each in the middle of its part.
            double part = (double)span.Length / blocks;
            int start = span.From + (int)((part * (block + 0.5)) - (RunSamples / 2.0));
            signals.Codes.AsSpan(start, RunSamples).Fill(rail);
        }
    }
}
