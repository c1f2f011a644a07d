using ChannelAudit.Findings;
using ChannelAudit.Results;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Looks up what was found and measured in a cell.</summary>
internal static class ScoredCells
{
    public static Finding Found(RecordingResult result, string site, int trial, string reason) => MadeAudit.Channel(result, site).Cells[trial - 1]
        .Findings.Single(finding => string.Equals(finding.Reason, reason, StringComparison.Ordinal));

    public static GradedMeasure Measure(RecordingResult result, string site, int trial, string name) => MadeAudit.Channel(result, site).Cells[trial - 1]
        .Measures.Single(one => string.Equals(one.Value.Measure, name, StringComparison.Ordinal));
}
