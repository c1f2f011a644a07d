namespace ChannelAudit.Measures;

/// <summary>The power of narrow peaks above the muscle around them.</summary>
/// <param name="Power">Power in the square of the signal's unit, not below zero.</param>
/// <param name="StandardError">What the muscle alone scatters by, same unit.</param>
/// <param name="Hz">Frequency of the peak (the mains frequency for line noise); 0 when there is none.</param>
public readonly record struct PeakReading(double Power, double StandardError, double Hz)
{
    /// <summary>Root of the power.</summary>
    public double Rms => Math.Sqrt(Power);

    /// <summary>The highest level that the reading allows: root of the power plus two standard errors.</summary>
    public double UpperRms => Math.Sqrt(Power + (2 * StandardError));

    /// <summary>Power over muscle power in dB; null when either is zero.</summary>
    public double? RatioDb(double emgPower) => Power > 0 && emgPower > 0 ? 10 * Math.Log10(Power / emgPower) : null;
}
