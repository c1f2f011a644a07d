using System.Buffers;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Surveys a channel while its blocks go by.</summary>
public sealed class TimeSurveyor
{
    // Enough to tell how often a sample repeats the one before.
    private const int RepeatEvery = 8;
    private const int Part = 512;

    private readonly Channel channel;
    private readonly ExtremePile upper;
    private readonly ExtremePile lower;
    private readonly RepeatRate repeats = new();
    private readonly SecondOrderSection filter;
    private readonly PopScreen? pops;
    private readonly EnvelopeSums? envelope;
    private readonly SignalPrint print;
    private readonly SwingCount swings;
    private double least = double.PositiveInfinity;
    private double greatest = double.NegativeInfinity;

    /// <summary>Starts with a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="spill">Takes what of a long recording does not stay in memory.</param>
    public TimeSurveyor(Channel channel, Spill? spill = null)
    {
        this.channel = channel;
        upper = new ExtremePile(channel.Step);
        lower = new ExtremePile(channel.Step);
        print = new SignalPrint(SpectralFrame.SegmentLengthOf(channel.Rate));
        swings = new SwingCount(channel.Rate.Value);
        if (channel.Rate.Value >= PopFilter.LeastRateHz)
        {
            (filter, pops, envelope) = (PopFilter.At(channel.Rate.Value), new PopScreen(channel.Rate.Value), new EnvelopeSums(channel, spill));
        }
    }

    /// <summary>Samples before each block that are needed to warm up a filter.</summary>
    public static int CarryOf(Channel channel) => PopFilter.WarmUp(channel.Rate.Value);

    /// <summary>Adds the next block.</summary>
    public void Add(SampleBlock block)
    {
        ReadOnlySpan<double> samples = block.Samples.Span;
        AddInParts(samples);
        AddPassed(block);
        print.Add(samples);
        swings.Add(samples);
        if (block.Number % RepeatEvery == 0)
        {
            repeats.Add(samples);
        }

        if (block.EndsPiece)
        {
            upper.Break();
            lower.Break();
            swings.Break();
        }
    }

    /// <summary>What the blocks showed.</summary>
    public TimeSurvey Finish()
    {
        long stored = channel.StoredLength;
        Rails rails = new(
            Rail(channel.LowerRail, lower, stored, -1),
            Rail(channel.UpperRail, upper, stored, 1),
            IsHidden(channel.LowerRail, lower, stored, -1),
            IsHidden(channel.UpperRail, upper, stored, 1),
            channel.Step);
        FlatLimits flat = FlatLimits.Of(channel.Rate.Value, channel.Step, channel.IsMicrovolts, repeats.Chance, repeats.Share, stored);
        return new TimeSurvey(rails, flat, least, greatest, pops) { Print = print.Finish(), Envelope = envelope, SwingsUp = swings.Up, SwingsDown = swings.Down };
    }

    private void AddPassed(SampleBlock block)
    {
        if (pops is null || envelope is null)
        {
            return;
        }

        int length = block.Samples.Length;
        double[] rented = ArrayPool<double>.Shared.Rent(length);
        try
        {
            Span<double> passed = rented.AsSpan(0, length);
            SettledHighPass.Filter(filter, block.WithCarry.Span, block.WithCarry.Length - length, passed);
            pops.Add(passed, block.Start);
            envelope.Add(passed, block.Start);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }

    private void AddInParts(ReadOnlySpan<double> samples)
    {
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
