using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

public sealed class SetupFileTests
{
    // The example of the project's own contract, key by key.
    private const string Whole =
        """
        [recording]
        mains_hz = 50.0
        sampling_hz = 497.4
        unit = "uV"
        amplifier_noise_uv = 0.7
        amplifier = "A"
        technician = "T3"
        date = 2026-03-12

        [[sites]]
        name = "cheek"
        muscle = "zygomaticus major"
        channel = "EMG cheek"
        side = "left"
        electrodes = ["C1", "C2"]
        adjacent = ["eye"]
        task = "raise lip corner"

        [[sites]]
        name = "eye"
        channel = "EMG eye"
        position = [0.5, 1]

        [trials]
        from = "annotations"
        rest = ["rest", "pause"]
        window = [0, 3.0]
        baseline_s = 1.0
        minimum = 6

        [scoring]
        highpass_hz = 20.0
        """;

    [Fact]
    public void EveryKeyIsRead()
    {
        StudySetup setup = SetupFile.Parse(Whole, "setup.toml");

        Assert.Equal(50, setup.Recording.MainsHz);
        Assert.Equal(497.4m, setup.Recording.SamplingHz);
        Assert.Equal("uV", setup.Recording.Unit);
        Assert.Equal(0.7, setup.Recording.AmplifierNoiseUv);
        Assert.Equal("A", setup.Recording.Amplifier);
        Assert.Equal("T3", setup.Recording.Technician);
        Assert.Equal("2026-03-12", setup.Recording.Date);
        Assert.Equal("cheek, eye", string.Join(", ", setup.Sites.Select(site => site.Name)));
        Assert.Equal("EMG cheek, EMG eye", string.Join(", ", setup.Sites.Select(site => site.Channel)));
        Assert.Equal("zygomaticus major", setup.Sites[0].Muscle);
        Assert.Equal("left", setup.Sites[0].Side);
        Assert.Equal("C1, C2", string.Join(", ", setup.Sites[0].Electrodes));
        Assert.Equal("eye", Assert.Single(setup.Sites[0].Adjacent));
        Assert.Equal("raise lip corner", setup.Sites[0].Task);
        Assert.Equal([0.5, 1.0], setup.Sites[1].Position.AsSpan().ToArray());
        Assert.Equal(TrialSource.Annotations, setup.Trials.From);
        Assert.Equal("rest, pause", string.Join(", ", setup.Trials.Rest));
        Assert.Equal(0m, setup.Trials.WindowFromS);
        Assert.Equal(3.0m, setup.Trials.WindowToS);
        Assert.Equal(1.0m, setup.Trials.BaselineS);
        Assert.Equal(6, setup.Trials.Minimum);
        Assert.Equal(20, setup.Scoring.HighpassHz);
        Assert.Equal("setup.toml", setup.FileName);
    }

    [Fact]
    public void AnEmptyFileSaysNothing()
    {
        StudySetup setup = SetupFile.Parse(string.Empty, "setup.toml");

        Assert.Empty(setup.Sites);
        Assert.Equal(new RecordingSetup(), setup.Recording);
        Assert.Null(setup.Trials.From);
        Assert.Null(setup.Trials.WindowFromS);
        Assert.Equal(8, setup.Trials.Minimum);
        Assert.Null(setup.Scoring.HighpassHz);

        // The SHA-256 of no bytes, a widely printed constant.
        Assert.Equal("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", setup.Sha256);
    }

    [Fact]
    public void AFileHasTheHashOfItsBytes()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("my.toml", Whole);

        StudySetup setup = SetupFile.Read(path);

        Assert.Equal("my.toml", setup.FileName);
        Assert.Equal(SetupFile.Parse(Whole, "my.toml").Sha256, setup.Sha256);
    }

    [Theory]
    [InlineData("\u00B5V")]
    [InlineData("\u03BCV")]
    public void BothMicroSignsMeanMicro(string unit) =>
        Assert.Equal("uV", SetupFile.Parse($"[recording]\nunit = \"{unit}\"\n", "s").Recording.Unit);

    [Theory]
    [InlineData("annotations", TrialSource.Annotations)]
    [InlineData("events", TrialSource.Events)]
    [InlineData("trigger", TrialSource.Trigger)]
    [InlineData("blocks", TrialSource.Blocks)]
    public void EverySourceOfTrialsHasItsWord(string word, TrialSource source) =>
        Assert.Equal(source, SetupFile.Parse($"[trials]\nfrom = \"{word}\"\n", "s").Trials.From);
}
