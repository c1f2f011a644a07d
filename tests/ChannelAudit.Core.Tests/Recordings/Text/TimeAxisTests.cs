using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Text;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>Rates, gaps and jitter; expected values worked by hand.</summary>
public sealed class TimeAxisTests
{
    [Theory]
    [InlineData(2000, "0.0000", 2000, 1)]
    [InlineData(2048, "0.000000", 2048, 1)]
    [InlineData(2048, "0.0000", 2048, 1)]
    [InlineData(497.4, "0.00000", 2487, 5)]
    [InlineData(333.33333333333331, "0.000", 1000, 3)]
    [InlineData(256, "0.000", 256, 1)]
    [InlineData(1000, "0.000", 1000, 1)]
    [InlineData(1024, "0.00000000", 1024, 1)]
    public void TheRateBehindPrintedTimesIsFound(double rateHz, string format, long numerator, long denominator)
    {
        string text = "t,a\n" + TextCase.Rows(9000, i => (i / rateHz).ToString(format, CultureInfo.InvariantCulture) + "," + (i % 7).ToString(CultureInfo.InvariantCulture));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal(new Rational(numerator, denominator), opened.Recording.Channels[0].Rate);
        Assert.Equal([new Stretch(0, 9000, 0)], opened.Recording.Channels[0].Stretches.ToArray());
        Assert.Empty(opened.Warnings());
    }

    [Fact]
    public void MissingRowsAreAGapOfThatLength()
    {
        // Rows 100 to 149 of 1000 are not there: 50 samples.
        string text = "t,a\n" + TextCase.Rows(1000, i => i is >= 100 and < 150 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{i % 7}")).Replace("\n\n", "\n", StringComparison.Ordinal);
        text = string.Join('\n', text.Split('\n', StringSplitOptions.RemoveEmptyEntries)) + "\n";
        using TextCase opened = TextCase.Open(text);
        Channel channel = opened.Recording.Channels[0];

        Assert.Equal(new Rational(1000, 1), channel.Rate);
        Assert.Equal([new Stretch(0, 100, 0), new Stretch(150, 850, 100)], channel.Stretches.ToArray());
        Assert.Equal(1.0, opened.Recording.DurationS, 12);
        Assert.Equal(["line 102: time jumps: 50 samples missing before this line"], opened.Warnings());
        double[] values = new double[4];
        opened.Recording.Samples.Read(0, 98, values);
        Assert.Equal([98 % 7, 99 % 7, 150 % 7, 151 % 7], values);
    }

    [Fact]
    public void EmptyCellsBreakOnlyTheirChannel()
    {
        string[] odd = ["", "n/a", "NaN", "null"];
        string text = "t,a,b\n" + TextCase.Rows(20, i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{(i is >= 5 and < 9 ? odd[i - 5] : i)},{i}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal([new Stretch(0, 5, 0), new Stretch(9, 11, 5)], opened.Recording.Channels[0].Stretches.ToArray());
        Assert.Equal([new Stretch(0, 20, 0)], opened.Recording.Channels[1].Stretches.ToArray());
        Assert.Equal([0, 1, 2, 3, 4, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19], opened.Samples("a"));
        Assert.Equal(["line 7: \"a\": 4 samples missing, the first here"], opened.Warnings());
    }

    [Fact]
    public void StampsOfAMicrocontrollerAreReadEvenlyAndTheirJitterIsSaid()
    {
        // 1000 Hz; stamps in µs late by 0, 300, 200 and 100 µs in turn: steps 1.3, 0.9, 0.9, 0.9 ms, SD sqrt((0.3² + 3 x 0.1²) / 4) ms.
        string text = "timestamp_us,a\n" + TextCase.Rows(5001, i => string.Create(CultureInfo.InvariantCulture, $"{(i * 1000) + (i * 7 % 4 * 100)},{i % 7}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal(1000, opened.Recording.Channels[0].Rate.Value, 3);
        Assert.Single(opened.Recording.Channels[0].Stretches.ToArray());
        Assert.Equal(
            ["time column: time stamps are uneven: mean rate 1000 Hz, steps from 0.9 to 1.3 ms (standard deviation 0.173 ms), samples up to 0.3 ms from their time;"
                + " read as evenly sampled"],
            opened.Warnings());
    }

    [Fact]
    public void ALateStampIsNoGap()
    {
        string text = "t,a\n" + TextCase.Rows(1000, i => string.Create(CultureInfo.InvariantCulture, $"{(i + (i == 500 ? 0.7 : 0)) / 1000.0:0.0000},{i % 7}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal([new Stretch(0, 1000, 0)], opened.Recording.Channels[0].Stretches.ToArray());
    }

    [Fact]
    public void TimeThatStartsLateCountsFromTheFirstSample()
    {
        string text = "t,a\n" + TextCase.Rows(100, i => string.Create(CultureInfo.InvariantCulture, $"{12.5 + (i / 1000.0):0.000},{i % 7}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal(0, opened.Recording.Channels[0].Stretches[0].Start);
        Assert.Equal(["line 2: time starts at 12.5 s; every time here counts from the first sample"], opened.Warnings());
    }

    [Fact]
    public void AClockMayPassMidnight()
    {
        string text = "t,a\n" + TextCase.Rows(200, i => i < 100
            ? string.Create(CultureInfo.InvariantCulture, $"23:59:59.{i * 10:000},{i % 7}")
            : string.Create(CultureInfo.InvariantCulture, $"00:00:00.{(i - 100) * 10:000},{i % 7}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal(new Rational(100, 1), opened.Recording.Channels[0].Rate);
        Assert.Equal([new Stretch(0, 200, 0)], opened.Recording.Channels[0].Stretches.ToArray());
        Assert.Equal(["line 102: the clock passes midnight; taken as the next day"], opened.Warnings());
    }

    [Fact]
    public void AStatedRateThatContradictsTheTimesIsSaid()
    {
        string text = "t,a\n" + TextCase.Rows(100, i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{i % 7}"));
        using TextCase opened = TextCase.Open(text, new ReadOptions(SamplingHz: 2000m));

        Assert.Equal(new Rational(1000, 1), opened.Recording.Channels[0].Rate);
        Assert.Equal(["header: the setup states 2000 Hz, the time column \"t\" gives 1000 Hz; the time column is used"], opened.Warnings());
    }

    [Fact]
    public void ACounterShowsGapsAtTheStatedRate()
    {
        string text = "sample,a\n" + TextCase.Rows(1500, i => string.Create(CultureInfo.InvariantCulture, $"{(i < 1200 ? i : i + 30)},{i % 7}"));
        using TextCase opened = TextCase.Open(text, new ReadOptions(SamplingHz: 500m));

        Assert.Equal([new Stretch(0, 1200, 0), new Stretch(1230, 300, 1200)], opened.Recording.Channels[0].Stretches.ToArray());
        Assert.Equal(["line 1202: time jumps: 30 samples missing before this line"], opened.Warnings());
    }

    [Fact]
    public void ThousandthsAreTooCoarseForSevenHundredHertz()
    {
        string text = "t,a\n" + TextCase.Rows(1000, i => string.Create(CultureInfo.InvariantCulture, $"{i / 700.0:0.000},{i % 7}"));

        Assert.StartsWith("rec.csv, column \"t\": no sampling rate holds:", TextCase.Fault(text), StringComparison.Ordinal);
    }

    [Fact]
    public void TheStepIsTheSmallestDifferenceInTheTextsOwnDigits()
    {
        // 0.3 - 0.1 - 0.1 is not 0.1 in binary; the text says 0.1 mV, that is 100 µV.
        using TextCase opened = TextCase.Open("t,a (mV),b\n" + TextCase.Rows(10, i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000},{0.1 * (i % 4):0.0},7.25")));

        Assert.Equal(100, opened.Recording.Channels[0].Step, 10);
        Assert.Equal(0.01, opened.Recording.Channels[1].Step, 12);
    }

    [Theory]
    [InlineData(249.93, 1e-3, 250, 1)]
    [InlineData(249.93, 1e-5, 24993, 100)]
    [InlineData(333.33333, 1e-7, 1000, 3)]
    [InlineData(1999.9999, 1e-6, 2000, 1)]
    public void ANiceRateIsTheOneWithTheFewestDigits(double found, double tolerance, long numerator, long denominator) =>
        Assert.Equal(new Rational(numerator, denominator), NiceRate.Find(found, tolerance));
}
