using ChannelAudit.Core.Tests.Recordings.Edf;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// The examples of the BIDS standard state uV in the EDF header and V in their channels table, with values around 1: the data folder's
/// README asks for the conflict to be reported. Which of the two is right cannot be known from the files.
/// </summary>
public sealed class UnitConflictTests
{
    private const string Jumping = "emg_ConcurrentIndependentUnits/sub-01/emg/sub-01_task-jumping_recording-";

    [SkippableTheory]
    [InlineData(Jumping + "bipolar", "EMG1")]
    [InlineData(Jumping + "highDensity", "EMG1, EMG2, EMG3 and 125 more")]
    [InlineData("emg_CustomBipolar/sub-01/emg/sub-01_task-holdWeight", "EMG1")]
    [InlineData("emg_CustomBipolarFace/sub-01/emg/sub-01_task-talking", "EMG1, EMG2, EMG3 and 3 more")]
    [InlineData("emg_IndependentMod/sub-01/emg/sub-01_task-grasping", "EMG1, EMG2, EMG3 and 3 more")]
    [InlineData("emg_MultiBodyParts/sub-01/emg/sub-01_task-mechPerturbations", "EMG1, EMG2")]
    [InlineData("emg_TwoHDsEMG/sub-01/emg/sub-01_task-isometric", "EMG1, EMG2, EMG3 and 125 more")]
    [InlineData("emg_TwoWristbands/sub-01/emg/sub-01_task-typing", "EMG0, EMG1, EMG2 and 29 more")]
    public void AnAuditNamesBothUnitsAndTheFile(string stem, string channels)
    {
        string path = RealFile.Path("bids/" + stem + "_emg.edf");

        RecordingResult result = RecordingAudit.Of(
            new RecordingEntry("real", path, Path.GetFileName(path)), StudySetup.Empty, DefaultCriteria.All, null, CancellationToken.None);

        Assert.Equal(
            new Warning(
                Path.GetFileName(stem) + "_channels.tsv",
                "column units",
                channels + ": the recording says uV, the table V; the recording's own unit is used"),
            Assert.Single(result.Warnings, warning => warning.Message.Contains("unit", StringComparison.Ordinal)));
    }

    /// <summary>Least and greatest value of the first channel in the header's uV: stored codes and limits read with Python's struct.</summary>
    [SkippableTheory]
    [InlineData(Jumping + "bipolar", -1.4087947237354084, 1.81818)]
    [InlineData("emg_CustomBipolarFace/sub-01/emg/sub-01_task-talking", -0.40942542265964754, 0.39715111073472176)]
    [InlineData("emg_TwoWristbands/sub-01/emg/sub-01_task-typing", -0.2774295807736324, 0.33300951091783004)]
    public void SamplesStayInTheUnitOfTheRecording(string stem, double least, double greatest)
    {
        string path = RealFile.Path("bids/" + stem + "_emg.edf");
        RecordingCompanions companions = BidsCompanions.Find(path);

        using Recording alone = RecordingOpener.Open(path, new ReadOptions());
        Recording recording = companions.ApplyTo(alone);
        double[] samplesUv = EdfCodes.Values(recording, 0);

        Assert.All(companions.Channels, row => Assert.Equal("V", row.Units));
        Assert.All(recording.Channels, channel => Assert.Equal(("uV", true), (channel.FileUnit, channel.IsMicrovolts)));
        Assert.Equal(least, samplesUv.Min(), 1e-9);
        Assert.Equal(greatest, samplesUv.Max(), 1e-9);
    }
}
