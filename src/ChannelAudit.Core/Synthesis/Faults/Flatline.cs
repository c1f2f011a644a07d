using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A channel that stands still: it holds its last code, or toggles between that and the next.</summary>
/// <param name="Site">The site.</param>
public sealed record Flatline(string Site) : Fault
{
    /// <summary>Whether the converter toggles between two codes, as with a lead off, instead of holding one.</summary>
    public bool Toggles { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        SampleSpan span = made.Plan.SamplesOf(Span);
        ReadOnlySpan<int> codes = made.CodesOf(Site);
        int from = span.From;
        int to = span.To;

        // The codes beside the stretch belong to it when they happen to be, or are by holding, the same.
        while (!Toggles && from > 0 && span.Length > 0 && codes[from - 1] == codes[span.From])
        {
            from--;
        }

        while (!Toggles && to < codes.Length && span.Length > 0 && codes[to] == codes[span.From])
        {
            to++;
        }

        return [TruthOf(made, ReasonCode.Flatline, [Site], "flat_run", 1000 * (to - from) / made.Plan.Rate.Value, "ms")];
    }

    internal override void EditCodes(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        int[] codes = path.Site(Site).Codes;
        int held = span.From > 0 ? codes[span.From - 1] : 0;
        Pcg32 random = NoiseStream.Of(path.Plan.Seed, "toggle:" + Site);
        int stay = 0;
        int step = 0;
        for (int i = span.From; i < span.To; i++)
        {
            // One to five samples on each code: too short to be taken for a held one.
            if (Toggles && stay-- == 0)
            {
                step = 1 - step;
                stay = (int)(5 * random.NextDouble());
            }

            codes[i] = held + step;
        }
    }
}
