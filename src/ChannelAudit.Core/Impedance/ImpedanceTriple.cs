namespace ChannelAudit.Impedance;

/// <summary>The three impedance readings of one site, each between two contacts with the body in series between them.</summary>
/// <param name="AbKohm">Between the pair's electrodes a and b, magnitude in kΩ, 0 or more.</param>
/// <param name="AGroundKohm">Between electrode a and ground, magnitude in kΩ, 0 or more.</param>
/// <param name="BGroundKohm">Between electrode b and ground, magnitude in kΩ, 0 or more.</param>
/// <remarks>a is the first electrode of the site, b the second: the channel is first minus second.</remarks>
public readonly record struct ImpedanceTriple(double AbKohm, double AGroundKohm, double BGroundKohm);
