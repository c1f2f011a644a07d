namespace ChannelAudit.Setup;

/// <summary>How the recording was made.</summary>
public sealed record RecordingSetup
{
    /// <summary>Mains frequency in Hz; null: found in the data.</summary>
    public double? MainsHz { get; init; }

    /// <summary>Sampling rate of text files without a time column.</summary>
    public decimal? SamplingHz { get; init; }

    /// <summary>Unit of files without one: <c>uV</c>, <c>mV</c>, <c>V</c>, <c>none</c>.</summary>
    public string? Unit { get; init; }

    /// <summary>The amplifier's own noise, µV rms in the band.</summary>
    public double? AmplifierNoiseUv { get; init; }

    /// <summary>Which lab; for what is compared over time: electrodes and amplifiers of one id in two labs are not the same.</summary>
    public string? Lab { get; init; }

    /// <summary>Which amplifier; for what is compared over time.</summary>
    public string? Amplifier { get; init; }

    /// <summary>Who prepared the sites; for what is compared over time.</summary>
    public string? Technician { get; init; }

    /// <summary>The day of the recording, <c>yyyy-MM-dd</c>.</summary>
    public string? Date { get; init; }
}
