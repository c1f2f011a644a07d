namespace ChannelAudit.Reports.Typed;

/// <summary>What the cells of a typed column hold.</summary>
internal enum CellKind
{
    /// <summary>Text in UTF-8.</summary>
    Text,

    /// <summary>Whole numbers.</summary>
    Whole,

    /// <summary>Numbers in double precision.</summary>
    Number,
}
