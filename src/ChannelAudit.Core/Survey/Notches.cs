using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;

namespace ChannelAudit.Survey;

/// <summary>Which harmonics of the mains a notch filter has taken out: claimed by the file, or seen as a hole in the spectrum.</summary>
public static class Notches
{
    private const double ClaimWithinHz = 2;

    /// <summary>The harmonic numbers behind a notch.</summary>
    public static ImmutableArray<int> Of(Channel channel, SpectrumSample sample, MainsResult mains)
    {
        ImmutableArray<int>.Builder notched = ImmutableArray.CreateBuilder<int>();
        for (int harmonic = 1; harmonic * mains.NominalHz <= EmgBand.HighestHz; harmonic++)
        {
            double hz = harmonic * mains.NominalHz;
            bool claimed = channel.Prefilter.NotchesHz.Any(notch => Math.Abs(notch - hz) <= ClaimWithinHz);
            if (claimed || sample.HasNotchAt(harmonic * mains.Hz))
            {
                notched.Add(harmonic);
            }
        }

        return notched.DrainToImmutable();
    }
}
