using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Tests.Recordings.Text;

/// <summary>Shapes in which instruments export, each told by content alone. Quoting: RFC 4180, section 2. Times: ISO 8601-1:2019, 5.3.1.</summary>
public sealed class AwkwardExportsTests
{
    // The same recording in every shape: 500 Hz, a = 0, 1.5, -3, 4.5, ... and b = 100, 99, 98, ... µV.
    private const int Count = 12;

    public static TheoryData<string, string> Shapes { get; } = new()
    {
        { "plain csv", "time,a,b\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "tabs, CRLF, blank lines at the end", ("time\ta\tb\n" + Csv("{0:0.000}\t{1:0.0}\t{2}") + "\n\n").Replace("\n", "\r\n", StringComparison.Ordinal) },
        { "semicolons and decimal commas", "time;a;b\n" + Csv("{0:0.000};{1:0.0};{2}").Replace('.', ',') },
        { "tabs and decimal commas", "time\ta\tb\n" + Csv("{0:0.000}\t{1:0.0}\t{2}").Replace('.', ',') },
        { "quoted decimal commas between commas", "\"time\",\"a\",\"b\"\n" + Csv("\"{0:0.000}\",\"{1:0.0}\",\"{2}\"").Replace(".", ",", StringComparison.Ordinal) },
        { "aligned with blanks", "    time      a      b\n" + Csv("{0,8:0.000} {1,8:0.0} {2,6}") },
        { "blanks and a comment sign", "# time a b\n" + Csv("{0:0.000} {1:0.0} {2}") },
        { "blanks after commas", "time, a, b\n" + Csv("{0:0.000}, {1:0.0}, {2}") },
        { "trailing separators", "time,a,b,\n" + Csv("{0:0.000},{1:0.0},{2},") },
        { "trailing separators below a header without", "time,a,b\n" + Csv("{0:0.000},{1:0.0},{2},") },
        { "exponents", "time,a,b\n" + Csv("{0:0.000E+00},{1:0.0000E+00},{2}") },
        { "key and value lines with colons", "Device: Amp 7\nChannels: 2\nSampling rate: 500 Hz\n\ntime,a,b\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "key and value in cells", "Device,Amp 7\nSubject,12\nSampling rate,500\nChannels,2\n\ntime,a,b\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "a long preamble with numbers", TextCase.Rows(30, i => FormattableString.Invariant($"Setting {i};{i * 3}")) + "time;a;b\n" + Csv("{0:0.000};{1:0.0};{2}") },
        { "a unit row", "time,a,b\ns,uV,uV\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "a unit row in brackets", "time;a;b\n(s);(µV);(µV)\n" + Csv("{0:0.000};{1:0.0};{2}") },
        { "units in labels", "Time (s),a (µV),b [uV]\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "millivolts in labels", "time [s];a [mV];b [mV]\n" + Csv("{0:0.000};{3:0.0000};{4:0.000}") },
        { "volts in a unit row", "time,a,b\ns,V,V\n" + Csv("{0:0.000},{5:0.0000000},{6:0.000000}") },
        { "milliseconds by name", "ms,a,b\n" + Csv("{7},{1:0.0},{2}") },
        { "milliseconds by unit", "time (ms),a,b\n" + Csv("{7:0.0},{1:0.0},{2}") },
        { "milliseconds without a unit", "Timestamp,a,b\n" + Csv("{7},{1:0.0},{2}") },
        { "microseconds without a unit", "timestamp,a,b\n" + Csv("{8},{1:0.0},{2}") },
        { "clock times", "time,a,b\n" + Csv("10:59:59.{9:000},{1:0.0},{2}") },
        { "clock times with decimal commas", "time;a;b\n" + Csv("10:59:59.{9:000};{1:0.0};{2}").Replace('.', ',') },
        { "minutes and seconds", "time,a,b\n" + Csv("03:07.{9:000},{1:0.0},{2}") },
        { "milliseconds behind a third colon", "time,a,b\n" + Csv("10:59:59:{9:000},{1:0.0},{2}") },
        { "date and time", "timestamp,a,b\n" + Csv("2026-03-12T10:59:59.{9:000}Z,{1:0.0},{2}") },
        { "date and time in German order", "Zeit;a;b\n" + Csv("12.03.2026 10:59:59.{9:000};{1:0.0};{2}") },
        { "time without a name", ",a,b\n" + Csv("{0:0.000},{1:0.0},{2}") },
        { "a byte order mark", "\uFEFFtime,a,b\n" + Csv("{0:0.000},{1:0.0},{2}") },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void EveryShapeGivesTheSameRecording(string shape, string text)
    {
        using TextCase opened = TextCase.Open(text);

        Assert.NotEmpty(shape);
        AssertIsTheRecording(opened);
    }

    [Fact]
    public void EncodingsAreToldByMarkOrContent()
    {
        string text = "time,a (µV),b (µV)\n" + Csv("{0:0.000},{1:0.0},{2}");
        Encoding[] encodings =
            [new UTF8Encoding(true), new UTF8Encoding(false), Encoding.Latin1, Encoding.Unicode, Encoding.BigEndianUnicode, new UnicodeEncoding(false, false)];

        foreach (Encoding encoding in encodings)
        {
            using TextCase opened = TextCase.Open(text, null, encoding);
            AssertIsTheRecording(opened);
            Assert.Equal("µV", opened.Recording.Channels[0].FileUnit);
            Assert.Empty(opened.Warnings());
        }
    }

    [Fact]
    public void ACommaCultureChangesNothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = comma;
            using TextCase opened = TextCase.Open("Timestamp,a,b\n" + Csv("{7},{1:0.0},{2}"));
            AssertIsTheRecording(opened);
            Assert.Equal(["header: the time column \"Timestamp\" has no unit; taken as ms (median step 2)"], opened.Warnings());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void WithoutTimeTheStatedRateHolds()
    {
        using TextCase opened = TextCase.Open("a,b\n" + Csv("{1:0.0},{2}"), new ReadOptions(SamplingHz: 500m));

        AssertIsTheRecording(opened);
        Assert.Empty(opened.Warnings());
    }

    [Fact]
    public void WithoutHeaderColumnsAreNamedByPosition()
    {
        using TextCase opened = TextCase.Open(Csv("{1:0.0}\t{2}"), new ReadOptions(SamplingHz: 500m));

        Assert.Equal(["column 1", "column 2"], opened.Recording.Channels.Select(channel => channel.Label).ToArray());
        Assert.Equal([0, 1.5, -3, 4.5], opened.Samples("column 1").Take(4));
    }

    [Fact]
    public void ThePreamblesRateIsUsedAndSaid()
    {
        using TextCase opened = TextCase.Open("Device;A\nSampling rate (Hz);497,4\n\na;b\n" + Csv("{1:0.0};{2}").Replace('.', ','));

        Assert.Equal(new Rational(4974, 10), opened.Recording.Channels[0].Rate);
        Assert.Equal(["preamble: sampling rate 497.4 Hz taken from the lines above the table"], opened.Warnings());
    }

    [Fact]
    public void ThePreamblesUnitIsUsedAndSaid()
    {
        using TextCase opened = TextCase.Open("Unit=mV\nInterval=2 ms\na\tb\n" + Csv("{3:0.0000}\t{4:0.000}"));

        AssertIsTheRecording(opened);
        Assert.Equal(
            ["preamble: unit mV taken from the lines above the table", "preamble: sampling rate 500 Hz taken from the lines above the table"],
            opened.Warnings());
    }

    [Fact]
    public void TheFilesUnitWinsOverTheSetups()
    {
        using TextCase opened = TextCase.Open("time,a (uV),b (uV)\n" + Csv("{0:0.000},{1:0.0},{2}"), new ReadOptions(Unit: "mV"));

        AssertIsTheRecording(opened);
        Assert.Equal(["header: \"a (uV)\" is in uV, the setup says mV; the file's own unit is used"], opened.Warnings());
    }

    [Fact]
    public void TheSetupsUnitIsUsedWhereTheFileIsSilent()
    {
        using TextCase millivolts = TextCase.Open("time,a,b\n" + Csv("{0:0.000},{3:0.0000},{4:0.000}"), new ReadOptions(Unit: "mV"));
        using TextCase raw = TextCase.Open("time,a,b\n" + Csv("{0:0.000},{1:0.0},{2}"), new ReadOptions(Unit: "none"));

        AssertIsTheRecording(millivolts);
        Assert.All(raw.Recording.Channels, channel => Assert.False(channel.IsMicrovolts));
        Assert.Equal([100, 99, 98], raw.Samples("b").Take(3));
    }

    [Fact]
    public void MarkersTextAndOtherQuantitiesAreListedAndNotAudited()
    {
        string text = "sample,time,a,b,Trigger,Label,skin (°C),note\n"
            + TextCase.Rows(Count, i => FormattableString.Invariant($"{i},{i * 0.002:0.000},{A(i):0.0},{100 - i},{(i == 4 ? 7 : 0)},{(i < 6 ? "rest" : "\"smile, big\"")},33.1,"));
        using TextCase opened = TextCase.Open(text);

        AssertIsTheRecording(opened);
        Assert.Equal(
            ["sample: a counter", "a: audited", "b: audited", "Trigger: a marker or trigger column", "Label: text, not numbers", "skin: its unit °C is no voltage",
                "note: a marker or trigger column"],
            opened.Recording.Channels.Select(channel => $"{channel.Label}: {channel.NotAudited ?? "audited"}").ToArray());
        Assert.Equal(7, opened.Samples("Trigger")[4]);
    }

    [Fact]
    public void AHeaderlessMarkerIsToldByItsHeldCodesADeadChannelIsNot()
    {
        string text = TextCase.Rows(40, i => FormattableString.Invariant($"{i * 0.002:0.000},{A(i):0.0},{i / 20},0"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal(["audited", "few whole values that hold: taken as a marker", "audited"], opened.Recording.Channels.Select(channel => channel.NotAudited ?? "audited").ToArray());
        Assert.Equal(
            ["header: \"column 1\" rises evenly: taken as time, not as a channel", "header: \"column 3\" is not audited: few whole values that hold: taken as a marker"],
            opened.Warnings());
    }

    [Fact]
    public void ALateRemarkMakesAnEmptyColumnText()
    {
        string text = "time,a,b,remark\n" + TextCase.Rows(3000, i => FormattableString.Invariant($"{i * 0.002:0.000},{A(i):0.0},{i % 50},{(i == 2500 ? "coughs" : "")}"));
        using TextCase opened = TextCase.Open(text);

        Assert.Equal("text, not numbers", opened.Recording.Channels[2].NotAudited);
        Assert.Equal(3000, opened.Recording.Channels[0].StoredLength);
    }

    [Fact]
    public void EqualLabelsAreToldApartByPosition()
    {
        using TextCase opened = TextCase.Open("time,EMG,EMG\n" + Csv("{0:0.000},{1:0.0},{2}"));

        Assert.Equal(["EMG", "EMG#2"], opened.Recording.Channels.Select(channel => channel.Label).ToArray());
        Assert.Equal(["EMG", "EMG"], opened.Recording.Channels.Select(channel => channel.RawLabel).ToArray());
    }

    private static double A(int i) => i * 1.5 * (i % 2 == 0 ? -1 : 1);

    private static string Csv(string format) => TextCase.Rows(Count, i => string.Format(
        CultureInfo.InvariantCulture, format, i * 0.002, A(i), 100 - i, A(i) / 1e3, (100 - i) / 1e3, A(i) / 1e6, (100 - i) / 1e6, i * 2, i * 2000, i * 2));

    private static void AssertIsTheRecording(TextCase opened)
    {
        Channel[] audited = [.. opened.Recording.Channels.Where(channel => channel.NotAudited is null)];
        Assert.Equal(["a", "b"], audited.Select(channel => channel.Label).ToArray());
        Assert.All(audited, channel => Assert.Equal(new Rational(500, 1), channel.Rate));
        Assert.All(audited, channel => Assert.Equal([new Stretch(0, Count, 0)], channel.Stretches.ToArray()));
        Assert.All(audited, channel => Assert.True(channel.IsMicrovolts));
        Assert.Equal(Enumerable.Range(0, Count).Select(A), opened.Samples("a"), (x, y) => Math.Abs(x - y) < 1e-9);
        Assert.Equal(Enumerable.Range(0, Count).Select(i => 100.0 - i), opened.Samples("b"), (x, y) => Math.Abs(x - y) < 1e-9);
        Assert.Equal(Count / 500.0, opened.Recording.DurationS, 12);
        Assert.Equal("text", opened.Recording.Format);
        Assert.Equal(1.0, audited[1].Step, 9);
        Assert.Null(audited[1].LowerRail);
        Assert.Null(audited[1].UpperRail);
    }
}
