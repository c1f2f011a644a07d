using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Finds the mains frequency in the data.</summary>
/// <remarks>
/// Nominal: the larger of the 50 and 60 Hz peaks (largest of three bins) over the median of their neighbours 3 to 10 bins away, over all
/// channels, in one-second spectra spread evenly over the recording. Then a power-of-two periodogram of at least 16 s where the rate and
/// the stretch allow it (10 s at least), of the channel and place with the strongest peak, refines it within 1 %: grids keep to that for
/// 99.5 % of the year (EN 50160). A peak less than 4 times its neighbours leaves the nominal frequency. Where neither 50 nor 60 Hz stands
/// out so far (rectifiers and lamps can leave harmonics alone), the harmonics are asked in the same way, those that both share left out.
/// </remarks>
public static class MainsFinder
{
    private const double WithinShare = 0.01;
    private const double ClearPeak = 4;

    // A tone that is not mains can lie near a harmonic; grids are this near to their name nearly always (common practice: 50 Hz within a quarter of a hertz).
    private const double HarmonicShare = 0.005;
    private const double LeastSeconds = 10;
    private const double WantedSeconds = 16;
    private static readonly double[] Nominals = [50, 60];

    /// <summary>The mains frequency of a recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">Its audited channels.</param>
    /// <param name="sample">Spectra of each of these channels, spread over the recording.</param>
    /// <param name="setup">May state the frequency.</param>
    public static MainsResult Find(
        Recording recording, ImmutableArray<Channel> channels, ImmutableArray<SpectrumSample> sample, RecordingSetup setup)
    {
        double[] nominals = setup.MainsHz is { } stated ? [stated] : Nominals;
        (double nominal, int harmonic, int strongest) = Strongest(sample, nominals);
        string origin = setup.MainsHz is null ? "the stronger of 50 and 60 Hz" : MainsResult.Stated;
        if (strongest < 0)
        {
            return new MainsResult(nominal, nominal, origin + MainsResult.NotSeen + "channel is fast enough to see it");
        }

        Channel channel = channels[strongest];
        double[]? stretch = Around(recording, channel, sample[strongest].StrongestAt(harmonic * nominal));
        if (stretch is null)
        {
            return new MainsResult(nominal, nominal, origin + MainsResult.NotSeen + "unbroken stretch of 10 s to refine it");
        }

        double[] density = LongPeriodogram.Density(stretch, channel.Rate.Value);
        double binHz = channel.Rate.Value / stretch.Length;
        double from = harmonic * nominal * (1 - WithinShare);
        double to = harmonic * nominal * (1 + WithinShare);
        if (LongPeriodogram.PeakProminence(density, binHz, from, to) < ClearPeak)
        {
            return new MainsResult(nominal, nominal, origin + MainsResult.NotSeen + "clear peak to refine it");
        }

        double found = LongPeriodogram.PeakHz(density, binHz, from, to) / harmonic;
        if (harmonic > 1 && Math.Abs(found - nominal) > HarmonicShare * nominal)
        {
            double plain = Strongest(sample, nominals, 1).Nominal;
            return new MainsResult(plain, plain, origin + MainsResult.NotSeen + "clear peak to refine it");
        }

        double seconds = stretch.Length / channel.Rate.Value;
        return new MainsResult(
            nominal,
            found,
            string.Create(CultureInfo.InvariantCulture, $"{origin}; refined in {seconds:0.0} s of {channel.Label}"));
    }

    private static (double Nominal, int Harmonic, int Channel) Strongest(ImmutableArray<SpectrumSample> sample, double[] nominals, int mostHarmonic = int.MaxValue)
    {
        double best = -1;
        (double Nominal, int Harmonic, int Channel) found = (nominals[0], 1, -1);
        for (int harmonic = 1; harmonic == 1 || (harmonic <= mostHarmonic && best < ClearPeak && harmonic * nominals[0] <= EmgBand.HighestHz); harmonic++)
        {
            foreach (double nominal in nominals.Where(nominal => harmonic == 1 || !IsShared(harmonic * nominal, nominals)))
            {
                for (int i = 0; i < sample.Length; i++)
                {
                    if (sample[i].Prominence(harmonic * nominal) is { } prominence
                        && prominence > best && (harmonic == 1 || prominence >= ClearPeak))
                    {
                        best = prominence;
                        found = (nominal, harmonic, i);
                    }
                }
            }
        }

        return found;
    }

    /// <summary>Whether a frequency is a harmonic of every candidate, so that it tells nothing.</summary>
    private static bool IsShared(double hz, double[] nominals) =>
        nominals.Length > 1 && nominals.All(nominal => Math.Abs(hz - (nominal * Math.Round(hz / nominal))) < 1);

    /// <summary>A power-of-two stretch of samples around a place, or null when none is long enough.</summary>
    private static double[]? Around(Recording recording, Channel channel, long place)
    {
        Stretch stretch = channel.Stretches.FirstOrDefault(s => s.Start <= place && place < s.End);
        double rate = channel.Rate.Value;
        if (stretch.Length < LeastSeconds * rate)
        {
            return null;
        }

        uint wanted = BitOperations.RoundUpToPowerOf2((uint)Math.Ceiling(WantedSeconds * rate));
        int length = LongPeriodogram.StretchLength((int)Math.Min(wanted, stretch.Length));
        if (length < LeastSeconds * rate)
        {
            return null;
        }

        long start = Math.Clamp(place - (length / 2), stretch.Start, stretch.End - length);
        double[] samples = new double[length];
        recording.Samples.Read(channel.Index, stretch.StoredStart + (start - stretch.Start), samples);
        return samples;
    }
}
