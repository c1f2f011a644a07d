using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>What must be known of a whole channel before any trial is judged: its rails, and how long equal samples are flat.</summary>
/// <param name="Rails">Stated and hidden rails.</param>
/// <param name="FlatLimits">From when on equal samples are flat.</param>
/// <param name="Least">The least value.</param>
/// <param name="Greatest">The greatest value.</param>
public sealed record TimeSurvey(Rails Rails, FlatLimits FlatLimits, double Least, double Greatest)
{
    private const int RepeatEvery = 8;

    /// <summary>Surveys a channel, block by block.</summary>
    public static TimeSurvey Of(Recording recording, Channel channel, CancellationToken cancellation)
    {
        ExtremePile upper = new(channel.Step);
        ExtremePile lower = new(channel.Step);
        RepeatRate repeats = new();
        double least = double.PositiveInfinity;
        double greatest = double.NegativeInfinity;
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, channel.Stretches, cancellation))
        {
            ReadOnlySpan<double> samples = block.Samples.Span;
            AddInParts(samples, upper, lower, ref least, ref greatest);
            if (block.Number % RepeatEvery == 0)
            {
                repeats.Add(samples);
            }

            if (block.EndsPiece)
            {
                upper.Break();
                lower.Break();
            }
        }

        long stored = channel.StoredLength;
        Rails rails = new(
            Rail(channel.LowerRail, lower, stored, -1),
            Rail(channel.UpperRail, upper, stored, 1),
            IsHidden(channel.LowerRail, lower, stored, -1),
            IsHidden(channel.UpperRail, upper, stored, 1),
            channel.Step);
        FlatLimits flat = FlatLimits.Of(channel.Rate.Value, channel.Step, channel.IsMicrovolts, repeats.Chance, stored);
        return new TimeSurvey(rails, flat, least, greatest);
    }

    private static void AddInParts(
        ReadOnlySpan<double> samples, ExtremePile upper, ExtremePile lower, ref double least, ref double greatest)
    {
        const int Part = 512;
        for (int start = 0; start < samples.Length; start += Part)
        {
            ReadOnlySpan<double> part = samples.Slice(start, Math.Min(Part, samples.Length - start));
            (double low, double high) = Extremes.Of(part);
            least = Math.Min(least, low);
            greatest = Math.Max(greatest, high);
            AddOrSkip(upper, part, 1, high);
            AddOrSkip(lower, part, -1, -low);
        }
    }

    private static void AddOrSkip(ExtremePile pile, ReadOnlySpan<double> part, double sign, double highest)
    {
        if (highest >= pile.Floor)
        {
            pile.Add(part, sign);
        }
        else
        {
            pile.Break();
        }
    }

    private static bool IsHidden(double? stated, ExtremePile pile, long samples, double sign) =>
        pile.IsRail(samples) && (stated is not { } rail || Math.Abs(rail - (sign * pile.Extreme)) > pile.Step * 1.5);

    private static double? Rail(double? stated, ExtremePile pile, long samples, double sign) =>
        IsHidden(stated, pile, samples, sign) ? sign * pile.Extreme : stated;
}
