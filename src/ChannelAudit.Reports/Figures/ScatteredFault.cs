using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures;

/// <summary>Findings whose stretch runs from the first to the last bad sample or trial, so that much of it may be good.</summary>
internal static class ScatteredFault
{
    private const double FilledFrom = 0.9;

    /// <summary>Whether a finding about a stretch need not hold all through it: it counts trials, or it is known sample by sample.</summary>
    public static bool Is(RecordingResult recording, ChannelResult channel, Finding finding) => finding.Trial is null
        && (ReasonPhrase.IsShareOfTrials(finding) || (ShareMeasure(finding.Reason) is { } measure && !Fills(recording, channel, finding, measure)));

    /// <summary>The trials inside a stretch that show the same fault, as findings.</summary>
    public static ImmutableArray<Finding> TrialsOf(ChannelResult channel, Finding stretch) =>
    [
        .. channel.Cells.SelectMany(cell => cell.Findings).Where(finding => finding.Grade > Grade.Pass
            && string.Equals(finding.Reason, stretch.Reason, StringComparison.Ordinal)
            && finding.ToS > stretch.FromS
            && finding.FromS < stretch.ToS),
    ];

    // When the bad samples of the whole recording last about as long as the stretch, they fill it.
    private static bool Fills(RecordingResult recording, ChannelResult channel, Finding finding, string measure)
    {
        bool countsStored = !string.Equals(measure, "missing", StringComparison.Ordinal);
        double lengthS = recording.DurationS - (countsStored ? recording.Gaps.Sum(gap => gap.ToS - gap.FromS) : 0);
        return channel.Measures.ValueOf(measure) is { } percent && percent / 100 * lengthS >= FilledFrom * (finding.ToS - finding.FromS);
    }

    private static string? ShareMeasure(string reason) => reason switch
    {
        ReasonCode.Clipping => "clipped",
        ReasonCode.Flatline => "flat",
        ReasonCode.Dropout => "missing",
        _ => null,
    };
}
