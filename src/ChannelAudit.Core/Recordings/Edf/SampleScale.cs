namespace ChannelAudit.Recordings.Edf;

/// <summary>From stored codes to values: <c>value = offset + (code - origin) x gain</c>, always calculated in this way, so that equal codes
/// give equal values and the rails equal the values of samples at them.</summary>
/// <param name="Offset">Value of the code <paramref name="Origin"/>.</param>
/// <param name="Gain">Value of one step; negative for inverted polarity.</param>
/// <param name="Origin">The digital minimum.</param>
internal readonly record struct SampleScale(double Offset, double Gain, int Origin)
{
    /// <summary>Codes as they are stored.</summary>
    public static SampleScale Codes { get; } = new(0, 1, 0);

    /// <summary>The affine rule of the format: physical = pmin + (code - dmin) (pmax - pmin) / (dmax - dmin).</summary>
    /// <param name="signal">A signal with limits.</param>
    /// <param name="unitScale">Values in one of the file's unit.</param>
    /// <returns>The scale, or null when a limit is missing or a pair of limits is equal.</returns>
    /// <remarks>Kemp et al. 1992, Electroenceph Clin Neurophysiol 82:391.</remarks>
    public static SampleScale? Physical(EdfSignalHeader signal, double unitScale)
    {
        if (signal is not { PhysicalMin: double pmin, PhysicalMax: double pmax, DigitalMin: int dmin, DigitalMax: int dmax }
            || pmin == pmax
            || dmin == dmax)
        {
            return null;
        }

        return new SampleScale(pmin * unitScale, (pmax - pmin) * unitScale / ((double)dmax - dmin), dmin);
    }

    /// <summary>The value of a code.</summary>
    public double ValueOf(int code) => Offset + ((code - Origin) * Gain);
}
