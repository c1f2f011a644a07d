using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Tests.Bids;

public sealed class BidsNameTests
{
    [Theory]
    [InlineData("sub-01/emg/sub-01_task-x_emg.edf", "sub-01/emg/sub-01_task-x_desc-quality_channels.tsv")]
    [InlineData("sub-01/ses-a/emg/sub-01_ses-a_task-x_acq-y_run-02_recording-z_emg.bdf", "sub-01/ses-a/emg/sub-01_ses-a_task-x_acq-y_run-02_recording-z_desc-quality_channels.tsv")]
    [InlineData("sub-01_task-x.csv", "sub-01/emg/sub-01_task-x_desc-quality_channels.tsv")]
    [InlineData("sub-01_emg.edf", "sub-01/emg/sub-01_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("day1/p07.edf", "sub-day1p07/emg/sub-day1p07_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("task-x_sub-01_emg.edf", "sub-taskxsub01emg/emg/sub-taskxsub01emg_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("sub-p_07.edf", "sub-p/emg/sub-p_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("sub-01_task-a-b_emg.edf", "sub-sub01taskabemg/emg/sub-sub01taskabemg_task-unnamed_desc-quality_channels.tsv")]
    public void ANameComesFromTheRecordingsOwnOrFromItsId(string path, string file) =>
        Assert.Equal(file, BidsName.Of(path, path[..path.LastIndexOf('.')].Replace('/', '+'))!.File("channels", ".tsv"));

    [Theory]
    [InlineData("P30/session2.edf", "P30", "sub-P30/ses-session2/emg/sub-P30_ses-session2_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("coast/P30.edf", "P30", "sub-P30/ses-coast/emg/sub-P30_ses-coast_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("P30.edf", "P30", "sub-P30/emg/sub-P30_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("P-30_day2.edf", "P-30", "sub-P30/ses-day2/emg/sub-P30_ses-day2_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("a/visit.edf", "Kiel 7", "sub-Kiel7/ses-avisit/emg/sub-Kiel7_ses-avisit_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("sub-01_task-x_emg.edf", "P30", "sub-01/emg/sub-01_task-x_desc-quality_channels.tsv")]
    [InlineData("sub-07/morning.edf", "sub-07", "sub-07/ses-morning/emg/sub-07_ses-morning_task-unnamed_desc-quality_channels.tsv")]
    [InlineData("P30.edf", "--", "sub-P30/emg/sub-P30_task-unnamed_desc-quality_channels.tsv")]
    public void AKnownParticipantIsTheSubjectAndTheRestOfTheIdTheSession(string path, string participant, string file) =>
        Assert.Equal(file, BidsName.Of(path, path[..path.LastIndexOf('.')].Replace('/', '+'), participant)!.File("channels", ".tsv"));

    [Fact]
    public void SessionsOfOneParticipantAreFineAndTwoParticipantsOfOneLabelAreNot()
    {
        StoredRecording one = Recording("P1/a") with { Participant = "P1" };

        Assert.Equal(2, BidsNames.Of([one, Recording("P1/b") with { Participant = "P1" }]).Count);
        Assert.EndsWith(
            ": both would be sub-P1 in BIDS",
            Assert.Throws<ChannelAuditException>(() => BidsNames.Of([one, Recording("P-1/b") with { Participant = "P-1" }])).Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("p-1", "p.1", "sub-p1_task-unnamed")]
    [InlineData("P1", "p1", "sub-p1_task-unnamed")]
    [InlineData("a/sub-01_task-x_emg", "b/sub-01_task-x_emg", "sub-01_task-x")]
    [InlineData("sub-01_task-x_emg", "01", "sub-01")]
    [InlineData("01", "sub-01_task-x_emg", "sub-01")]
    public void TwoRecordingsOfOneNameAreRefused(string one, string other, string name)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => BidsNames.Of([Recording(one), Recording(other)]));

        Assert.EndsWith($": both would be {name} in BIDS", fault.Message, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void SeveralRecordingsOfOneStatedParticipantAreFine() =>
        Assert.Equal(2, BidsNames.Of([Recording("sub-01_task-x_run-1_emg"), Recording("sub-01_task-x_run-2_emg")]).Count);

    [Fact]
    public void AnIdWithoutLettersOrDigitsIsRefused() =>
        Assert.StartsWith("___: has no ASCII letter", Assert.Throws<ChannelAuditException>(() => BidsNames.Of([Recording("___")])).Message, StringComparison.Ordinal);

    private static StoredRecording Recording(string path) => new(path.Replace('/', '+'), path + ".edf", string.Empty);
}
