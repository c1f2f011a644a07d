namespace ChannelAudit.Recordings.Text;

/// <summary>What the next line of a text is.</summary>
internal enum PlainLine
{
    /// <summary>A row with as many cells as there are columns.</summary>
    Row,

    /// <summary>Nothing but blanks.</summary>
    Blank,

    /// <summary>Something for the splitter: quotes, other signs than ASCII, another number of cells.</summary>
    NotPlain,

    /// <summary>The text has ended.</summary>
    End,
}
