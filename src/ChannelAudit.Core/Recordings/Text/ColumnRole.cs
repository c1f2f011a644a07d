namespace ChannelAudit.Recordings.Text;

/// <summary>What a column of a delimited text is for.</summary>
internal enum ColumnRole
{
    /// <summary>Samples of a channel.</summary>
    Signal,

    /// <summary>The time of each row.</summary>
    Time,

    /// <summary>The number of each row.</summary>
    Counter,

    /// <summary>Numbers that are listed and stored, not audited: a marker, a trigger, something that is no voltage.</summary>
    Marker,

    /// <summary>Text: listed, not stored.</summary>
    Text,
}
