using ChannelAudit.Core.Tests.Recordings.Edf;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings;

/// <summary>Numbers that no amplifier writes are refused, or their channel is not audited, before anything is measured. Bounds: engineering judgement.</summary>
public sealed class RecordingBoundsTests
{
    [Theory]
    [InlineData("0.000001", "sampled at 4E+06 Hz: no rate of a muscle's recording")]
    [InlineData("10", "sampled at 0.4 Hz: no rate of a muscle's recording")]
    [InlineData("4", null)]
    [InlineData("0.000004", null)]
    public void AChannelOfNoPossibleRateIsNotAudited(string recordS, string? why)
    {
        using MadeEdf file = new();
        using Recording recording = file.Set("duration", recordS).Open();

        Assert.Equal(why, recording.Channels[0].NotAudited);
    }

    [Theory]
    [InlineData("1E30", "not calibrated: a physical limit of 1E+30 \u00B5V is no voltage")]
    [InlineData("-9E300", "not calibrated: a physical limit of 9E+300 \u00B5V is no voltage")]
    [InlineData("1E18", null)]
    public void AChannelBeyondAnyVoltageIsNotAudited(string most, string? why)
    {
        using MadeEdf file = new();
        using Recording recording = file.Set("pmax 0", most).Open();

        Assert.Equal(why, recording.Channels[0].NotAudited);
        Assert.Null(recording.Channels[1].NotAudited);
    }

    [Theory]
    [InlineData(86_400, 1, null)]
    [InlineData(86_401, 8_640_100, null)]
    [InlineData(86_401, 8_640_099, "made.edf: 24 hours from the first to the last sample, but only 8,640,099 samples in any channel that could be audited")]
    [InlineData(1e30, 1_000_000, "made.edf: 277,777,777,777,778,000,000,000,000 hours from the first to the last sample, but only 1,000,000 samples in any channel that could be audited")]
    public void MoreThanADayMustHoldSamples(double durationS, long samples, string? refusal)
    {
        using MadeEdf file = new();
        using Recording made = file.Open();
        using Recording recording = new()
        {
            FileName = "made.edf",
            Format = "EDF",
            Channels = [made.Channels[0] with { Stretches = [new Stretch(0, samples, 0)] }, made.Channels[1] with { NotAudited = "status or trigger signal", Stretches = [new Stretch(0, long.MaxValue, 0)] }],
            DurationS = durationS,
            Samples = made.Samples,
        };

        Assert.Equal(refusal, Record.Exception(() => RecordingBounds.CheckSpan(recording))?.Message);
    }

    [Fact]
    public void AJumpOfAYearIsRefusedWhereItIsOpened()
    {
        using MadeEdf file = new();
        string path = Path.ChangeExtension(file.Path, ".csv");
        File.WriteAllText(path, "time (s),EMG cheek\n" + string.Concat(Enumerable.Range(0, 400).Select(i => FormattableString.Invariant($"{(i * 0.001) + (i < 200 ? 0 : 3e7):0.000},{i % 7}\n"))));

        ChannelAuditException refused = Assert.Throws<ChannelAuditException>(() => RecordingOpener.Open(path, new ReadOptions()).Dispose());

        Assert.StartsWith("made.csv: 8,333 hours from the first to the last sample, but only 400 samples", refused.Message, StringComparison.Ordinal);
        Assert.StartsWith("a time is wrong, or parts of other days follow", refused.Hint, StringComparison.Ordinal);
    }
}
