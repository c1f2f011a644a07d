using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Measures;

/// <summary>The signal in which pops are looked for: behind a Butterworth high-pass of order 2 at 20 Hz, forward only.</summary>
public static class PopFilter
{
    /// <summary>Below this rate a pop of a few milliseconds is no shape any more.</summary>
    public const double LeastRateHz = 500;

    private const double CornerHz = 20;
    private const double WarmUpSeconds = 0.5;

    /// <summary>The filter at a rate.</summary>
    public static SecondOrderSection At(double rateHz) => Butterworth.HighPass(CornerHz, rateHz);

    /// <summary>Samples that it warms up on.</summary>
    public static int WarmUp(double rateHz) => (int)(WarmUpSeconds * rateHz);
}
