namespace ChannelAudit.Cli.Screening;

/// <summary>Which pictures to draw.</summary>
internal enum FigureChoice
{
    /// <summary>None.</summary>
    None,

    /// <summary>One picture a recording.</summary>
    Summary,

    /// <summary>All of them.</summary>
    All,
}
