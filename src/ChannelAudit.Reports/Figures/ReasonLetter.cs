namespace ChannelAudit.Reports.Figures;

/// <summary>How a reason is written where there is little room.</summary>
/// <param name="Code">The reason code.</param>
/// <param name="Letter">Its letter.</param>
/// <param name="Name">Two words at most.</param>
public sealed record ReasonLetter(string Code, string Letter, string Name);
