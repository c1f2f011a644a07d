using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Counts slow deflections to either side, as of blinks: their sign shows which electrode comes first.</summary>
/// <remarks>
/// Means over 50 ms, in windows of 10 s. A deflection is a run of 2 to 20 means (0.1 to 1 s) on one side of the window's median, beyond eight times the window's own
/// spread (1.4826 times the median absolute deviation). Engineering judgement.
/// </remarks>
internal sealed class SwingCount
{
    private const double BinSeconds = 0.05;
    private const int WindowBins = 200;
    private const int FewestBins = 2;
    private const int MostBins = 20;
    private const double Beyond = 8 * 1.4826;

    private readonly int perBin;
    private readonly double[] bins = new double[WindowBins];
    private int filled;
    private double sum;
    private int inBin;

    /// <summary>Starts.</summary>
    /// <param name="rateHz">Samples per second.</param>
    public SwingCount(double rateHz) => perBin = Math.Max(1, (int)Math.Round(BinSeconds * rateHz));

    /// <summary>Deflections upwards.</summary>
    public int Up { get; private set; }

    /// <summary>Deflections downwards.</summary>
    public int Down { get; private set; }

    /// <summary>Adds the next samples.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        while (!samples.IsEmpty)
        {
            if (inBin == 0 && filled + RunSums.Runs <= WindowBins && samples.Length >= RunSums.Runs * perBin)
            {
                AddFour(samples);
                samples = samples[(RunSums.Runs * perBin)..];
                continue;
            }

            int taken = Math.Min(perBin - inBin, samples.Length);
            foreach (double sample in samples[..taken])
            {
                sum += sample;
            }

            samples = samples[taken..];
            inBin += taken;
            if (inBin == perBin)
            {
                bins[filled++] = sum / perBin;
                (sum, inBin) = (0, 0);
            }

            CountIfFull();
        }
    }

    private void AddFour(ReadOnlySpan<double> samples)
    {
        Span<double> four = bins.AsSpan(filled, RunSums.Runs);
        RunSums.Of(samples, perBin, four);
        foreach (ref double bin in four)
        {
            bin /= perBin;
        }

        filled += RunSums.Runs;
        CountIfFull();
    }

    private void CountIfFull()
    {
        if (filled == WindowBins)
        {
            Count();
        }
    }

    /// <summary>Says that the samples that follow do not join.</summary>
    public void Break() => (filled, sum, inBin) = (0, 0, 0);

    private void Count()
    {
        filled = 0;
        double median = Quantiles.Median(bins);
        double limit = Beyond * Quantiles.Median(Array.ConvertAll(bins, value => Math.Abs(value - median)));
        int run = 0;
        int side = 0;
        for (int i = 0; i <= WindowBins; i++)
        {
            int now = i == WindowBins || Math.Abs(bins[i] - median) <= limit ? 0 : Math.Sign(bins[i] - median);
            if (now == side)
            {
                run++;
                continue;
            }

            if (run is >= FewestBins and <= MostBins)
            {
                Up += side > 0 ? 1 : 0;
                Down += side < 0 ? 1 : 0;
            }

            (side, run) = (now, 1);
        }
    }
}
