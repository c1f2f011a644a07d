namespace ChannelAudit.Drafts;

/// <summary>How often a label occurs among the events of a recording.</summary>
/// <param name="Label">The label without blanks around it.</param>
/// <param name="Count">How often.</param>
/// <param name="ShortestS">Duration of the shortest in seconds, 0 for an instant.</param>
/// <param name="LongestS">Duration of the longest in seconds.</param>
public sealed record LabelCount(string Label, int Count, decimal ShortestS, decimal LongestS);
