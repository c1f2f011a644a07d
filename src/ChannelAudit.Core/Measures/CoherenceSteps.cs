using System.Collections.Immutable;

namespace ChannelAudit.Measures;

/// <summary>The coherence of two channels in steps of frequency, mains left out.</summary>
/// <param name="Segments">Segments in the means.</param>
/// <param name="Steps">Middle of each step in Hz and the magnitude-squared coherence of the densities summed over it, 0 to 1.</param>
public sealed record CoherenceSteps(int Segments, ImmutableArray<(double Hz, double Coherence)> Steps)
{
    private const double StepHz = 10;

    /// <summary>From mean densities.</summary>
    /// <param name="bands">The pair's bands; only their bins count.</param>
    /// <param name="re">Real part of the mean cross-density, from the first bin of the bands on.</param>
    /// <param name="im">Imaginary part.</param>
    /// <param name="densityA">Density of the first channel, from the same bin on.</param>
    /// <param name="densityB">Density of the second channel.</param>
    /// <param name="segments">Segments in the means.</param>
    public static CoherenceSteps Of(
        PairBands bands, ReadOnlySpan<double> re, ReadOnlySpan<double> im, ReadOnlySpan<double> densityA, ReadOnlySpan<double> densityB, int segments)
    {
        SortedDictionary<int, (double Re, double Im, double A, double B)> sums = [];
        foreach ((BinRange range, double toHz) in bands.Low.Select(range => (range, PairBands.LowToHz)).Concat(bands.High.Select(range => (range, PairBands.HighToHz))))
        {
            // The upper edge belongs to the last step: a step of a single bin would be mostly chance.
            int lastStep = (int)(toHz / StepHz) - 1;
            for (int bin = range.From; bin <= range.To; bin++)
            {
                int step = Math.Min(lastStep, (int)(bin * bands.BinHz / StepHz));
                int at = bin - bands.FirstBin;
                (double Re, double Im, double A, double B) sum = sums.GetValueOrDefault(step);
                sums[step] = (sum.Re + re[at], sum.Im + im[at], sum.A + densityA[at], sum.B + densityB[at]);
            }
        }

        return new CoherenceSteps(segments, [.. sums.Where(sum => sum.Value.A > 0 && sum.Value.B > 0).Select(Step)]);
    }

    private static (double Hz, double Coherence) Step(KeyValuePair<int, (double Re, double Im, double A, double B)> sum) => (
        (sum.Key + 0.5) * StepHz,
        ((sum.Value.Re * sum.Value.Re) + (sum.Value.Im * sum.Value.Im)) / (sum.Value.A * sum.Value.B));
}
