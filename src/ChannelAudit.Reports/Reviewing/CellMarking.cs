using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A finding on the trace, or a part of one.</summary>
/// <param name="FromS">Start in seconds.</param>
/// <param name="ToS">End in seconds.</param>
/// <param name="Letter">The letter of its reason.</param>
/// <param name="Grade">Questionable or reject.</param>
/// <param name="IsExact">Whether these very samples are at fault; else the finding is about the stretch as a whole.</param>
internal readonly record struct CellMarking(double FromS, double ToS, string Letter, Grade Grade, bool IsExact = false);
