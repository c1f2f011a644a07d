namespace ChannelAudit.Decisions;

/// <summary>The trial that a decision is about, so that another trial under the same number is not taken for it.</summary>
/// <param name="Number">From 1.</param>
/// <param name="OnsetS">Onset of the event, seconds from the first stored sample.</param>
/// <param name="DurationS">Its duration in seconds.</param>
/// <param name="Label">Its label, or null.</param>
public sealed record DecidedTrial(int Number, decimal OnsetS, decimal DurationS, string? Label);
