using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>Something about readings that a person should know before relying on them.</summary>
/// <param name="Code">What it is.</param>
/// <param name="Sites">The sites that it is about, one or two.</param>
/// <param name="Seen">What was seen, with the numbers, as part of a sentence.</param>
/// <param name="Advice">What to do, short; cautions stand once beside all of it.</param>
public sealed record ImpedanceWarning(ImpedanceWarningCode Code, ImmutableArray<string> Sites, string Seen, string Advice)
{
    /// <summary>Whether the readings of these sites cannot be taken at their word.</summary>
    public bool CastsDoubt => Code is ImpedanceWarningCode.UnitInDoubt or ImpedanceWarningCode.SitesJoined or ImpedanceWarningCode.PairJoined
        or ImpedanceWarningCode.GroundJoined or ImpedanceWarningCode.TooLow or ImpedanceWarningCode.GroundDiffers or ImpedanceWarningCode.Inconsistent;
}
