namespace ChannelAudit.Measures;

/// <summary>From which length equal samples count as flat on a channel, and how still is still.</summary>
/// <param name="HeldRun">Samples of a run of equal codes from which it is flat; 0 when equal codes say nothing on this channel.</param>
/// <param name="StillLength">Samples of the 100 ms in which a still channel hardly moves.</param>
/// <param name="StillRange">Greatest range in those 100 ms, in the unit of the samples; 0 when stillness cannot be told on this channel.</param>
/// <param name="IsCoarse">Whether the resolution is too coarse: a step above the noise.</param>
public readonly record struct FlatLimits(int HeldRun, int StillLength, double StillRange, bool IsCoarse)
{
    private const double HeldSeconds = 0.025;
    private const int HeldSamples = 12;
    private const double StillSeconds = 0.1;
    private const double StillMicrovolts = 0.1;

    // From a step of twice the noise on it depends on where the baseline lies between two codes how long one is held.
    private const double HalfRepeats = 0.5;
    private const double HardlyMoves = 0.75;

    // Electrodes and amplifier move a finer step than this by themselves: where they do not, the channel is dead, not coarse.
    private const double CoarseMicrovolts = 0.5;

    /// <summary>Whether a flat stretch could be told at all.</summary>
    public bool CanTell => HeldRun > 0 || StillRange > 0;

    /// <summary>The limits of a channel.</summary>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="step">The smallest step between two values.</param>
    /// <param name="isMicrovolts">Whether 0.1 µV means anything on this channel.</param>
    /// <param name="repeatChance">How often a sample repeats the one before it.</param>
    /// <param name="repeatShare">The same with long runs counted in.</param>
    /// <param name="samples">Samples in the channel.</param>
    public static FlatLimits Of(double rateHz, double step, bool isMicrovolts, double repeatChance, double repeatShare, long samples)
    {
        int held = Math.Max(HeldSamples, (int)Math.Ceiling(HeldSeconds * rateHz));
        bool coarse = repeatChance > RepeatRate.Coarse;
        if (coarse && (repeatChance > HalfRepeats || repeatShare > HardlyMoves) && (step > CoarseMicrovolts || !isMicrovolts))
        {
            held = 0;
        }
        else if (coarse)
        {
            // Three times the longest run that chance makes: ln N / ln(1/p).
            held = (int)Math.Max(held, Math.Min(int.MaxValue / 2, 3 * Math.Log(samples) / -Math.Log(Math.Min(repeatChance, 0.999))));
        }

        // Finer than the usual change from sample to sample (1.4826 x its median): more than half of the samples differ from the last.
        bool canBeStill = repeatChance < 0.5 && step > 0;
        double range = Math.Max(step * 1.001, isMicrovolts ? StillMicrovolts : 0);
        return new FlatLimits(held, Math.Max(2, (int)Math.Round(StillSeconds * rateHz)), canBeStill ? range : 0, coarse);
    }
}
