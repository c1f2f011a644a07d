using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Tests.Reviewing;

/// <summary>Findings of a cell laid on its trace.</summary>
public sealed class CellMarksTests
{
    [Fact]
    public void SamplesAtFaultAreMarkedInsideTheFindingOnly()
    {
        ImmutableArray<CellMarking> marks = Of(ReasonCode.Flatline, new FaultMark(ReasonCode.Flatline, 4, 11), new FaultMark(ReasonCode.Flatline, 12, 30), new FaultMark(ReasonCode.Clipping, 10, 11));

        Assert.Equal([new CellMarking(10, 11, "F", Grade.Reject, IsExact: true), new CellMarking(12, 13, "F", Grade.Reject, IsExact: true)], marks.AsEnumerable());
    }

    [Fact]
    public void AFindingOfNoSingleSampleHasItsStretch() =>
        Assert.Equal([new CellMarking(10, 13, "L", Grade.Reject)], Of(ReasonCode.LineNoise, new FaultMark(ReasonCode.Flatline, 10, 11)).AsEnumerable());

    [Fact]
    public void FaultsOfWhichNothingWasFoundAreNotMarked() => Assert.Empty(Of(null, new FaultMark(ReasonCode.Clipping, 10, 11)));

    private static ImmutableArray<CellMarking> Of(string? reason, params ReadOnlySpan<FaultMark> faults)
    {
        RecordingResult recording = SampleResults.Clean("x");
        ChannelResult channel = recording.Channels[0];
        CellResult cell = channel.Cells[0];
        if (reason is not null)
        {
            cell = cell with
            {
                Verdict = Grade.Reject,
                Reasons = [reason],
                Findings =
                [
                    new Finding
                    {
                        Reason = reason, Grade = Grade.Reject, Channels = [channel.Name], Trial = cell.Trial, FromS = 10, ToS = 13, Evidence = [], Text = "seen", Cause = "cause",
                    },
                ],
            };
        }

        return CellMarks.Of(recording, channel with { Cells = channel.Cells.SetItem(0, cell) }, cell, [.. faults]);
    }
}
