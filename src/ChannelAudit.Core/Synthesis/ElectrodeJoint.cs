namespace ChannelAudit.Synthesis;

/// <summary>A conducting path of gel between two electrodes.</summary>
/// <param name="One">An electrode.</param>
/// <param name="Other">Another electrode.</param>
/// <param name="Kohm">Resistance of the path in kΩ; 0 makes one node of the two.</param>
public sealed record ElectrodeJoint(Electrode One, Electrode Other, double Kohm);
