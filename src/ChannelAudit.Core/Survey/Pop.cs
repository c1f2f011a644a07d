namespace ChannelAudit.Survey;

/// <summary>A short, isolated spike.</summary>
/// <param name="At">Timeline index of its top.</param>
/// <param name="Height">Its height behind the high-pass, unit of the samples.</param>
public readonly record struct Pop(long At, double Height);
