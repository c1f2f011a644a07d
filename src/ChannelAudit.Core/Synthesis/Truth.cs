using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>What a fault really is: the answer that an audit should find.</summary>
/// <param name="Reason">The reason code, or the information code of a confuser that is no fault.</param>
/// <param name="Sites">Names of the sites that carry it.</param>
/// <param name="Measure">The measure that shows it.</param>
/// <param name="Size">Its size in the measure's unit, over its own stretch.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Span">Where it is.</param>
/// <param name="Trials">Numbers, from 1, of the trials that it meets.</param>
public sealed record Truth(
    string Reason,
    ImmutableArray<string> Sites,
    string Measure,
    double Size,
    string Unit,
    FaultSpan Span,
    ImmutableArray<int> Trials);
