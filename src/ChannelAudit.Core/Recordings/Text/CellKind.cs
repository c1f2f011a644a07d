namespace ChannelAudit.Recordings.Text;

/// <summary>What one cell of a table holds.</summary>
internal enum CellKind
{
    /// <summary>Nothing, <c>n/a</c>, <c>NaN</c> and the like.</summary>
    Missing,

    /// <summary>A finite number.</summary>
    Number,

    /// <summary>An infinite number, or one too large for a double.</summary>
    Infinite,

    /// <summary>A clock time or a date with a time.</summary>
    Clock,

    /// <summary>Anything else.</summary>
    Word,
}
