using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>Golden texts of every fault of a delimited text.</summary>
public sealed class TextFaultsTests
{
    private const string Redo = "export the recording again, and check that the export finished";
    private const string State = "state sampling_hz under [recording] in the setup file, for instance sampling_hz = 2000.0";

    private static readonly string Good = "time,a,b\n" + TextCase.Rows(10, Row);

    [Fact]
    public void AnEmptyFileIsRefused()
    {
        Assert.Equal($"rec.csv: not a recording: the file is empty | {Redo}", TextCase.Fault(string.Empty));
        Assert.Equal($"rec.csv: not a recording: the file is empty | {Redo}", TextCase.Fault("\n \n\n"));
    }

    [Fact]
    public void BytesAreRefused()
    {
        string bytes = new([.. Enumerable.Range(0, 4000).Select(i => (char)(i * 37 % 256))]);

        Assert.Equal(
            "rec.csv: not a recording: the bytes are no text and no EDF or BDF header | give an EDF, EDF+ or BDF file, or delimited text with one column a channel",
            TextCase.Fault(bytes, null, Encoding.Latin1));
    }

    // A thousand channels are read; a table with one row a channel has as many columns as samples.
    [Fact]
    public void ATableLyingOnItsSideIsRefused()
    {
        string Lying(int columns) => TextCase.Rows(3, row => string.Join(',', Enumerable.Range(0, columns).Select(column => ((row + column) % 7).ToString(CultureInfo.InvariantCulture))));
        ReadOptions stated = new(SamplingHz: 1000);
        using TextCase wide = TextCase.Open(Lying(1000), stated);

        Assert.Equal(1000, wide.Recording.Channels.Length);
        Assert.Equal(
            "rec.csv, line 1: more than 1000 columns | give one column a channel and one row a sample: a table with one row a channel is to be turned round",
            TextCase.Fault(Lying(1001), stated));
    }

    [Fact]
    public void ProseIsRefused()
    {
        const string Expected = "rec.csv: not a recording: no table of numbers found | give delimited text with one column a channel and one row a sample";

        Assert.Equal(Expected, TextCase.Fault("Dear all,\nplease find the data in the other folder.\n"));
        Assert.Equal(Expected, TextCase.Fault("On 3 May we saw 12 people\nand in June 4 more came\nthen nobody\nat all\nuntil 2 of them returned\nwith friends and family\n"));
    }

    [Fact]
    public void AMissingFileIsSaid()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => ChannelAudit.Recordings.Text.DelimitedText.Open(Path.Combine(Path.GetTempPath(), "channelaudit-none.csv"), new ReadOptions()));

        Assert.Equal("channelaudit-none.csv: cannot be read: it does not exist", fault.Message);
        Assert.Equal(FaultKind.Recording, fault.Kind);
    }

    [Fact]
    public void AnEventsTableIsNoRecording() => Assert.Equal(
        "rec.csv, line 1: an events table (onset, duration), not a recording | give the recording itself, and this file with --events",
        TextCase.Fault("onset\tduration\ttrial_type\n1.0\t2.0\trest\n4.0\t2.0\tsmile\n"));

    [Fact]
    public void ARaggedRowIsNamedWithBothCounts()
    {
        Assert.Equal(
            "rec.csv, line 6: expected 3 columns, found 2 | repair or remove that row, or export the recording again",
            TextCase.Fault(Good.Replace("0.008,4,-4\n", "0.008,4\n", StringComparison.Ordinal)));
        Assert.Equal(
            "rec.csv, line 2: expected 3 columns, found 5 | repair or remove that row, or export the recording again",
            TextCase.Fault("time,a,b\n0.000,1,2,3,4\n" + TextCase.Rows(9, i => Row(i + 1))));
    }

    [Fact]
    public void AShortLastRowThatIsAWholeLineIsNamed() => Assert.Equal(
        "rec.csv, line 12: expected 3 columns, found 2 | repair or remove that row, or export the recording again",
        TextCase.Fault(Good + "0.020,1\n"));

    [Fact]
    public void ARaggedRowFarDownIsFound() => Assert.Equal(
        "rec.csv, line 20002: expected 3 columns, found 4 | repair or remove that row, or export the recording again",
        TextCase.Fault("time,a,b\n" + TextCase.Rows(20_000, Row) + "40.000,1,2,3\n"));

    [Fact]
    public void AWordAmongNumbersIsNamedWithItsPlace()
    {
        Assert.Equal(
            "rec.csv, line 6, column \"a\": \"overload\" is not a number | write n/a for a missing sample, or correct the cell",
            TextCase.Fault(Good.Replace("0.008,4,-4\n", "0.008,overload,-4\n", StringComparison.Ordinal)));
        Assert.Equal(
            "rec.csv, line 2, column \"a\": \"overload\" is not a number | write n/a for a missing sample, or correct the cell",
            TextCase.Fault(Good.Replace("0.000,0,0\n", "0.000,overload,0\n", StringComparison.Ordinal)));
    }

    [Fact]
    public void ARowOfWordsInsideTheTableIsNoSecondHeader() => Assert.Equal(
        "rec.csv, line 6, column \"time\": \"lost\" is not a time like the others in this column | correct the cell, or remove the column and state sampling_hz in the setup file",
        TextCase.Fault(Good.Replace("0.008,4,-4\n", "lost,lost,lost\n", StringComparison.Ordinal)));

    [Fact]
    public void SeveralRowsOfWordsAreNoSecondHeaderEither() => Assert.Equal(
        "rec.csv, line 6, column \"time\": \"lost\" is not a time like the others in this column | correct the cell, or remove the column and state sampling_hz in the setup file",
        TextCase.Fault(Good.Replace("0.008,4,-4\n", "lost,lost,lost\nlost,lost,lost\n", StringComparison.Ordinal)));

    [Theory]
    [InlineData("inf")]
    [InlineData("-Infinity")]
    [InlineData("1e999")]
    [InlineData("∞")]
    public void InfiniteValuesAreRefused(string text) => Assert.Equal(
        $"rec.csv, line 6, column \"b\": \"{text}\" is not a finite number | write n/a for a missing sample, or correct the cell",
        TextCase.Fault(Good.Replace("0.008,4,-4\n", $"0.008,4,{text}\n", StringComparison.Ordinal)));

    [Fact]
    public void TimeRunningBackwardsIsNamed() => Assert.Equal(
        "rec.csv, line 6, column \"time\": time runs backwards, from 0.006 to 0.004 | export the recording in order of time, one recording a file",
        TextCase.Fault(Good.Replace("0.008,4", "0.004,4", StringComparison.Ordinal)));

    [Fact]
    public void ARepeatedTimeIsNamed() => Assert.Equal(
        "rec.csv, line 6, column \"time\": the time 0.006 is there twice | export times with more digits, or remove the column and state sampling_hz in the setup file",
        TextCase.Fault(Good.Replace("0.008,4", "0.006,4", StringComparison.Ordinal)));

    [Fact]
    public void AMissingTimeIsNamed() => Assert.Equal(
        "rec.csv, line 6, column \"time\": no time in a row of samples | fill in the time, or remove the column and state sampling_hz in the setup file",
        TextCase.Fault(Good.Replace("0.008,4", ",4", StringComparison.Ordinal)));

    [Fact]
    public void TimesFromWhichNoRateFollowsAreRefused()
    {
        // Steps of 1, 4, 9, 16, ... ms.
        string text = "time,a\n" + TextCase.Rows(40, i => FormattableString.Invariant($"{i * (i + 1) * ((2 * i) + 1) / 6 / 1000.0:0.000},{i % 3}"));

        Assert.Equal(
            "rec.csv, column \"time\": no sampling rate holds: 30 of 39 steps differ from the median step by more than half of it"
                + " | export evenly spaced samples with enough digits, or remove the column and state sampling_hz in the setup file",
            Digits(TextCase.Fault(text), 30));
    }

    [Fact]
    public void WithoutTimeAndRateTheSetupIsNamed() =>
        Assert.Equal($"rec.csv: no time column and no sampling rate | {State}", TextCase.Fault("a,b\n" + TextCase.Rows(10, i => FormattableString.Invariant($"{i % 3},{-i % 4}"))));

    [Fact]
    public void ACountIsNoTime()
    {
        Assert.Equal(
            $"rec.csv: column \"sample\" counts samples but does not say how long one lasts | {State}",
            TextCase.Fault("sample,a\n" + TextCase.Rows(10, i => FormattableString.Invariant($"{i},{i % 3}"))));
        Assert.Equal(
            $"rec.csv: column \"column 1\" counts samples but does not say how long one lasts | {State}",
            TextCase.Fault(TextCase.Rows(10, i => FormattableString.Invariant($"{i},{i % 3}"))));
    }

    [Fact]
    public void AnAmbiguousCommaIsNotGuessed() => Assert.Equal(
        "rec.csv, line 2: \"12,5\" is one number with a decimal comma or two columns, and the header names one"
            + " | export with decimal dots, or with semicolons or tabs between columns",
        TextCase.Fault("EMG\n12,5\n13,1\n12,9\n"));

    [Fact]
    public void UnquotedDecimalCommasBetweenCommasAreSeenInTheHeader() => Assert.Equal(
        "rec.csv, line 1: the header names 2 columns, but line 2 has 4"
            + " | give every column one name; if decimal commas are used, separate columns with semicolons or tabs",
        TextCase.Fault("time,a\n" + TextCase.Rows(5, i => FormattableString.Invariant($"0,00{i},1,{i}"))));

    [Fact]
    public void NoChannelLeftIsRefused() => Assert.Equal(
        "rec.csv: no channel to audit: every column is time, a marker, text or no voltage | check the labels and units in the header",
        TextCase.Fault("time,trigger,skin (°C)\n" + TextCase.Rows(10, i => FormattableString.Invariant($"0.{i:000},0,33.{i}"))));

    [Theory]
    [InlineData("0", "0")]
    [InlineData("0.5", "0.5")]
    [InlineData("1000001", "1E+06")]
    public void AStatedRateOfNoRecordingIsRefused(string hz, string said) => Assert.Equal(
        $"rec.csv: a sampling rate of {said} Hz is not possible: 1 to 1,000,000 Hz" + RateHint,
        TextCase.Fault("a\n1\n2\n1\n", new ReadOptions(SamplingHz: decimal.Parse(hz, CultureInfo.InvariantCulture))));

    // Times 1e-15 and 2e13 s apart ended as a bug: the rate fits no decimal number.
    [Theory]
    [InlineData("0.000000000000001", "1E+15")]
    [InlineData("20000000000000", "5E-14")]
    [InlineData("3", "0.333333")]
    public void TimesOfNoRecordingAreRefused(string stepS, string said)
    {
        decimal step = decimal.Parse(stepS, CultureInfo.InvariantCulture);

        Assert.Equal(
            $"rec.csv: a sampling rate of {said} Hz is not possible: 1 to 1,000,000 Hz" + RateHint,
            TextCase.Fault("time (s),a\n" + TextCase.Rows(20, i => FormattableString.Invariant($"{i * step},{i % 3}"))));
    }

    [Theory]
    [InlineData("a", "2e18")]
    [InlineData("a", "-1e300")]
    [InlineData("a (V)", "2e12")]
    [InlineData("a", "9999999999999999999")]
    public void ANumberBeyondAnyVoltageIsRefused(string column, string cell) => Assert.Equal(
        $"rec.csv, line 5, column \"{column}\": \"{cell}\" is no voltage that an amplifier gives | write n/a for a missing sample, or correct the cell",
        TextCase.Fault($"time (s),{column}\n" + TextCase.Rows(20, i => FormattableString.Invariant($"0.{i:000},{(i == 3 ? cell : "1")}"))));

    [Fact]
    public void ANumberBeyondAnyVoltageInAColumnOfMarkersIsNothing() => Assert.Equal(
        "opened",
        TextCase.Fault("time (s),a,trigger\n" + TextCase.Rows(20, i => FormattableString.Invariant($"0.{i:000},{i % 5},1e18"))));

    [Fact]
    public void AQuoteWithoutEndIsRefused()
    {
        string text = "time,a,b\n" + TextCase.Rows(500_000, i => i == 3 ? "0.006,3,\"-3" : Row(i));

        Assert.StartsWith("rec.csv", TextCase.Fault(text), StringComparison.Ordinal);
    }

    [Fact]
    public void AMissingFolderForTemporaryFilesIsSaid() => Assert.Equal(
        "rec.csv: the temporary file for its numbers cannot be written: it does not exist | make room in the folder for temporary files, or name another with TMPDIR",
        TextCase.Fault(Good, new ReadOptions(TemporaryFolder: Path.Combine(Path.GetTempPath(), "channelaudit", "none"))));

    private const string RateHint = " | correct the times, the lines above the table or sampling_hz in the setup file, or name the time column's unit, as in \"time (ms)\"";

    private static string Row(int i) => string.Create(CultureInfo.InvariantCulture, $"{i * 0.002:0.000},{i},{-i}");

    // The count in the message is checked to be large, not to the last step.
    private static string Digits(string fault, int expected)
    {
        string found = new([.. fault.SkipWhile(sign => !char.IsAsciiDigit(sign)).TakeWhile(char.IsAsciiDigit)]);
        Assert.InRange(int.Parse(found, CultureInfo.InvariantCulture), 10, 39);
        return fault.Replace($": {found} of", $": {expected.ToString(CultureInfo.InvariantCulture)} of", StringComparison.Ordinal);
    }
}
