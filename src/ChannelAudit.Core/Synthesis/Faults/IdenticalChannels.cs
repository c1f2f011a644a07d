using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A channel that was stored twice: the second site shows the codes of the first.</summary>
/// <param name="FromSite">The site whose codes are copied.</param>
/// <param name="ToSite">The site that shows them.</param>
public sealed record IdenticalChannels(string FromSite, string ToSite) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, ReasonCode.Bridge, [FromSite, ToSite], "rho", 1, "1")];

    internal override void EditCodes(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        path.Site(FromSite).Codes.AsSpan(span.From, span.Length).CopyTo(path.Site(ToSite).Codes.AsSpan(span.From));
    }
}
