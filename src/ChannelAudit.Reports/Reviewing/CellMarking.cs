using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A finding on the trace.</summary>
/// <param name="FromS">Start in seconds.</param>
/// <param name="ToS">End in seconds.</param>
/// <param name="Letter">The letter of its reason.</param>
/// <param name="Grade">Questionable or reject.</param>
internal readonly record struct CellMarking(double FromS, double ToS, string Letter, Grade Grade);
