namespace ChannelAudit.Findings;

/// <summary>A question that could not be answered: never the same as "good".</summary>
/// <param name="Reason">The reason code that could not be judged.</param>
/// <param name="Cause">Why, in words.</param>
public sealed record NotAssessed(string Reason, string Cause);
