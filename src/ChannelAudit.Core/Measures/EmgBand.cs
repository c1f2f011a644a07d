using ChannelAudit.Recordings;

namespace ChannelAudit.Measures;

/// <summary>The frequencies in which facial EMG is judged: 20 Hz to the least of 450 Hz, 0.9 x the low-pass, 0.45 x the rate.</summary>
/// <param name="FromHz">Lower edge.</param>
/// <param name="ToHz">Upper edge.</param>
/// <remarks>
/// High-pass 15 to 25 Hz and low-pass 400 to 500 Hz suit nine facial, jaw and neck muscles: van Boxtel (2001), Psychophysiology 38:22-34.
/// </remarks>
public readonly record struct EmgBand(double FromHz, double ToHz)
{
    /// <summary>The lower edge of the band in Hz.</summary>
    public const double LowestHz = 20;

    /// <summary>The upper edge of the full band in Hz.</summary>
    public const double HighestHz = 450;

    /// <summary>Whether there is enough of a band to say anything: its top lies at 52 Hz or above, so that one line harmonic fits.</summary>
    public bool IsUsable => ToHz >= 52;

    /// <summary>The band of a channel.</summary>
    public static EmgBand Of(Channel channel)
    {
        double top = Math.Min(HighestHz, 0.45 * channel.Rate.Value);
        if (channel.Prefilter.LowpassHz is > 0 and double lowpass)
        {
            top = Math.Min(top, 0.9 * lowpass);
        }

        return new EmgBand(LowestHz, top);
    }

    /// <summary>The first bin inside the band.</summary>
    public int FirstBin(double binHz) => (int)Math.Ceiling((FromHz / binHz) - 1e-9);

    /// <summary>The last bin inside the band.</summary>
    public int LastBin(double binHz) => (int)Math.Floor((ToHz / binHz) + 1e-9);
}
