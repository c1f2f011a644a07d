using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>Whether a high-pass hides motion: claimed by the file above 5 Hz, or shown by quiet seconds that hold next to nothing from 2 to 4 Hz.</summary>
/// <remarks>
/// The noise of amplifier and electrodes is as strong at low frequencies as at the top of the band, and in a real room stronger. A muscle has at
/// the top about 0.07 of its density from 80 to 150 Hz; what is above a tenth of that is noise. Engineering judgement: a density from 2 to 4 Hz
/// below a quarter both of that noise and of the density from 2 to 15 Hz is taken for a filter's work.
/// </remarks>
public static class MotionGate
{
    private const double HidesAboveHz = 5;
    private const double EmptyShare = 0.25;
    private const double MuscleAtTop = 0.1;

    /// <summary>Why motion is hidden, or null when it would be seen.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="frame">Its frame.</param>
    /// <param name="table">Its segments.</param>
    /// <param name="quiet">Which of them are quiet.</param>
    public static string? Cause(Channel channel, SpectralFrame frame, SegmentTable table, ImmutableArray<int> quiet)
    {
        if (channel.Prefilter.HighpassHz is > HidesAboveHz and double claimed)
        {
            return string.Create(CultureInfo.InvariantCulture, $"high-pass {claimed:0.###} Hz claimed by the file");
        }

        return frame.Band.IsUsable && !quiet.IsEmpty && LooksFiltered(frame, table, quiet)
            ? "hardly any power from 2 to 4 Hz: the file looks high-passed"
            : null;
    }

    private static bool LooksFiltered(SpectralFrame frame, SegmentTable table, ImmutableArray<int> quiet)
    {
        double lowest = quiet.Sum(i => table.LowestPower[i]) / (frame.LowestBins.Count * frame.BinHz);
        double low = quiet.Sum(i => table.LowPower[i]) / (frame.LowBins.Count * frame.BinHz);
        double noise = quiet.Sum(i => table.Top[i] - (MuscleAtTop * table.Middle[i]));
        return lowest < EmptyShare * low && lowest < EmptyShare * noise;
    }
}
