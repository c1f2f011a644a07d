namespace ChannelAudit.Reports.Figures.Looks;

/// <summary>How a verdict looks: one shape and one fill each; ordered by what is drawn on top.</summary>
internal enum VerdictLook
{
    /// <summary>A light disc, a low block.</summary>
    Pass,

    /// <summary>An empty dashed frame with a bar: nothing could be judged.</summary>
    NotAssessed,

    /// <summary>A triangle, a striped block of middle height.</summary>
    Questionable,

    /// <summary>A dark square with a cross, a dark block of full height.</summary>
    Reject,
}
