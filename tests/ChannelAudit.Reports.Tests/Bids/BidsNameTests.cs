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
