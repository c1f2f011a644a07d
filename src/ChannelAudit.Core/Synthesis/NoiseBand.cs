namespace ChannelAudit.Synthesis;

/// <summary>The shape of a spectrum: white noise through two second-order Butterworth filters.</summary>
/// <param name="LowHz">High-pass cut-off in Hz; 0: none.</param>
/// <param name="HighHz">Low-pass cut-off in Hz.</param>
public sealed record NoiseBand(double LowHz, double HighHz)
{
    /// <summary>Surface EMG of a small muscle: broad around 100 Hz, falling above (whiteness of a contraction 0.07: methods 1.9).</summary>
    public static NoiseBand Muscle { get; } = new(30, 230);

    /// <summary>Sway of leads and skin.</summary>
    public static NoiseBand Motion { get; } = new(0.5, 8);

    /// <summary>The band in which amplitudes of noise are stated.</summary>
    internal const double StatedBandHz = 430;

    /// <summary>The part of the power between two frequencies, for the analogue filters.</summary>
    /// <param name="fromHz">Lower end.</param>
    /// <param name="toHz">Upper end.</param>
    /// <remarks>Power response 1/((1+(low/f)⁴)·(1+(f/high)⁴)), summed at 4000 points up to 40 times the upper cut-off.</remarks>
    public double ShareBetween(double fromHz, double toHz)
    {
        const int points = 4000;
        double all = 0;
        double inside = 0;
        for (int i = 0; i < points; i++)
        {
            // Steps grow with frequency so that a narrow low end is seen as well as a long tail.
            double place = (i + 0.5) / points;
            double hz = HighHz * 40 * place * place * place;
            double low = LowHz / hz;
            double high = hz / HighHz;
            double power = place * place / ((1 + (low * low * low * low)) * (1 + (high * high * high * high)));
            all += power;
            inside += hz >= fromHz && hz < toHz ? power : 0;
        }

        return inside / all;
    }
}
