using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The filter that a cell is shown behind when that is asked for: the one that findings were judged behind, without its notches; else an ordinary high-pass.</summary>
internal static class BehindFilter
{
    /// <summary>The filter of a recording; null when its words cannot be read or it has no high-pass, which alone a trace can be shown behind.</summary>
    public static ScoringFilter? Of(RecordingResult recording) => recording.Scoring is not { } words ? ScoringFilter.Ordinary
        : ScoringFilter.FromWords(words) is { Setup.HighpassHz: not null } filter ? ScoringFilter.Of(filter.Setup with { NotchesHz = [] })
        : null;
}
