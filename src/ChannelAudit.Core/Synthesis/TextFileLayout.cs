namespace ChannelAudit.Synthesis;

/// <summary>How a made recording is written as delimited text.</summary>
public sealed record TextFileLayout
{
    /// <summary>Separator between cells; not the decimal sign.</summary>
    public char Separator { get; init; } = '\t';

    /// <summary>The decimal sign.</summary>
    public char DecimalSign { get; init; } = '.';

    /// <summary>Whether the first column is the time in seconds.</summary>
    public bool HasTime { get; init; } = true;

    /// <summary>Whether a row of units follows the labels.</summary>
    public bool HasUnitRow { get; init; }

    /// <summary>Lines before the labels, as instruments write them.</summary>
    public string Preamble { get; init; } = string.Empty;
}
