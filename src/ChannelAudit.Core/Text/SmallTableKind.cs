namespace ChannelAudit.Text;

/// <summary>What a small table should be, for messages.</summary>
/// <param name="Noun">With its article: "an events table".</param>
/// <param name="Shape">What such a table looks like, in one sentence: the hint when a file is none.</param>
internal sealed record SmallTableKind(string Noun, string Shape);
