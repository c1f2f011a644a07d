namespace ChannelAudit.Recordings.Text;

/// <summary>What a unit measures.</summary>
internal enum TextUnitKind
{
    /// <summary>Volts and their parts.</summary>
    Voltage,

    /// <summary>Seconds and their parts.</summary>
    Time,

    /// <summary>A clock format such as <c>hh:mm:ss</c>.</summary>
    Clock,

    /// <summary>Codes without a unit.</summary>
    Raw,

    /// <summary>Anything that is no voltage: such a column is not audited.</summary>
    Other,
}
