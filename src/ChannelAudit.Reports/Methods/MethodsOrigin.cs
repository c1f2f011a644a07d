using ChannelAudit.Criteria;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Methods;

/// <summary>With what a run was made, as its methods paragraph names it.</summary>
/// <param name="Version">The version of the program.</param>
/// <param name="Criteria">The limits in force.</param>
/// <param name="Setup">The setup file, or none.</param>
/// <param name="Impedance">The impedance readings, or none.</param>
public sealed record MethodsOrigin(string Version, AuditCriteria Criteria, StoredInput Setup, StoredInput Impedance);
