using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>One second of a channel without its spectrum.</summary>
/// <param name="Least">Its least sample.</param>
/// <param name="Greatest">Its greatest sample.</param>
/// <param name="Mean">The mean of its samples.</param>
/// <param name="AtExtreme">The larger of the shares of samples that equal its least, or its greatest, 0 to 1.</param>
public readonly record struct SampledSecond(double Least, double Greatest, double Mean, double AtExtreme)
{
    /// <summary>Whether the channel moved at all.</summary>
    public bool Moves => Greatest > Least;

    /// <summary>Reads a second.</summary>
    public static SampledSecond Of(ReadOnlySpan<double> samples)
    {
        (double least, double greatest) = Extremes.Of(samples);
        double sum = 0;
        int atLeast = 0;
        int atGreatest = 0;
        foreach (double sample in samples)
        {
            sum += sample;
            atLeast += sample == least ? 1 : 0;
            atGreatest += sample == greatest ? 1 : 0;
        }

        return new SampledSecond(least, greatest, sum / samples.Length, (double)Math.Max(atLeast, atGreatest) / samples.Length);
    }

    /// <summary>The same turned upside down.</summary>
    public SampledSecond Turned() => this with { Least = -Greatest, Greatest = -Least, Mean = -Mean };
}
