namespace ChannelAudit.Reports.Figures;

/// <summary>How a reason is written where there is room for a letter only.</summary>
/// <param name="Code">The reason code.</param>
/// <param name="Letter">Its letter.</param>
public sealed record ReasonLetter(string Code, string Letter);
