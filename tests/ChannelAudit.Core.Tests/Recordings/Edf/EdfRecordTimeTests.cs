using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Times of records: Kemp and Olivan 2003, EDF+ text 2.2.4; treatments of what breaks it: common practice.</summary>
public sealed class EdfRecordTimeTests
{
    [Fact]
    public void AMisfitInAContinuousFileIsReportedOnceWithItsRecord()
    {
        using MadeEdf file = new();
        file.SetAnnotations(1, "+4||_").SetAnnotations(2, "+5||_");

        Assert.Equal(
            "made.edf, record 2: says it starts at 4 s, 1 s was expected in a continuous recording; samples were kept without a gap",
            Assert.Single(file.Warnings()));
        using Recording recording = file.Open();
        Assert.Equal([new(0, 12, 0)], recording.Channels[0].Stretches.ToArray());
    }

    [Fact]
    public void AMissingRecordTimeIsReported()
    {
        using MadeEdf file = new(MadeEdf.Small() with { RecordStartsS = [0, 3, 9] });
        using Recording recording = file.SetAnnotations(1, string.Empty).Open();

        Assert.Equal("does not say when it starts; taken to follow the record before it without a gap", Assert.Single(recording.Warnings).Message);
        Assert.Equal("record 2", recording.Warnings[0].Place);
        Assert.Equal([new(0, 8, 0), new(36, 4, 8)], recording.Channels[0].Stretches.ToArray());
    }

    [Fact]
    public void TimeRunningBackwardsIsRefused()
    {
        using MadeEdf file = new(MadeEdf.Small() with { RecordStartsS = [0, 5, 2.5m] });

        Assert.Equal(
            "made.edf, record 3: time runs backwards: the record starts at 2.5 s, before the end of record 2 at 6 s",
            file.Refusal().Message);
    }

    [Fact]
    public void ALargeOverlapIsRefused()
    {
        using MadeEdf file = new(MadeEdf.Small() with { RecordStartsS = [0, 0.9m, 2] });

        Assert.Equal(
            "made.edf, record 2: time runs backwards: the record starts at 0.9 s, before the end of record 1 at 1 s",
            file.Refusal().Message);
    }

    [Fact]
    public void AnOverlapOfMillisecondsIsClosedWithAWarning()
    {
        // 1000 Hz: 3 ms early is 3 samples; the record after it is on time again.
        using MadeEdf file = new(Fast([0, 0.997m, 2]));
        using Recording recording = file.Open();

        Assert.Equal([new(0, 3000, 0)], recording.Channels[0].Stretches.ToArray());
        Assert.Equal(
            "says it starts at 0.997 s, before the end of the record before it at 1 s; placed directly behind it",
            Assert.Single(recording.Warnings).Message);
    }

    [Theory]
    [InlineData("1.0004", 1)]
    [InlineData("0.9996", 1)]
    [InlineData("1.0006", 2)]
    public void HalfASampleDecidesWhetherThereIsAGap(string second, int stretches)
    {
        decimal start = decimal.Parse(second, System.Globalization.CultureInfo.InvariantCulture);
        using MadeEdf file = new(Fast([0, start, start + 1]));
        using Recording recording = file.Open();

        Assert.Equal(stretches, recording.Channels[0].Stretches.Length);
        Assert.Empty(recording.Warnings);
    }

    [Fact]
    public void EachRateHasItsOwnGrid()
    {
        // A gap of 0.3 s: 300 samples at 1000 Hz, 3 at 10 Hz, none at 1 Hz (a third of a sample).
        EdfContent content = Fast([0, 1.3m, 2.3m]);
        using MadeEdf file = new(content with
        {
            Signals = [content.Signals[0], content.Signals[0] with { SamplesPerRecord = 10 }, content.Signals[0] with { SamplesPerRecord = 1 }],
        });
        using Recording recording = file.Open();

        Assert.Equal([new(0, 1000, 0), new(1300, 2000, 1000)], recording.Channels[0].Stretches.ToArray());
        Assert.Equal([new(0, 10, 0), new(13, 20, 10)], recording.Channels[1].Stretches.ToArray());
        Assert.Equal([new(0, 3, 0)], recording.Channels[2].Stretches.ToArray());
    }

    [Fact]
    public void AStartOffTheFullSecondIsTimeZero()
    {
        using MadeEdf file = new(Fast([0.25m, 1.25m, 3.5m]) with { Annotations = [new(2.5m, 1, "smile")] });
        using Recording recording = file.Open();

        Assert.Equal([new(0, 2000, 0), new(3250, 1000, 2000)], recording.Channels[0].Stretches.ToArray());
        Assert.Equal(new Annotation(2.5m, 1, "smile"), recording.Annotations[0]);
        Assert.Equal(4.25, recording.DurationS);
    }

    private static EdfContent Fast(decimal[] starts) =>
        new([MadeEdf.Signal("EMG") with { SamplesPerRecord = 1000 }], starts.Length) { RecordStartsS = [.. starts] };
}
