using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using CsCheck;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

public sealed class EdfWriterTests
{
    private static readonly Gen<Annotation> AnyAnnotation = Gen.Select(
        Gen.Int[0, 60_000],
        Gen.Int[-1, 5000],
        Gen.String[Gen.OneOf(Gen.Char['a', 'z'], Gen.Char[' ', '~'], Gen.Const('\u00B5'), Gen.Const('\u4E2D'), Gen.Const('\n')), 1, 20],
        (onset, duration, text) => new Annotation(onset / 1000m, duration < 0 ? null : duration / 1000m, text));

    private static readonly decimal[] Durations = [0.1m, 0.25m, 0.5m, 1m, 2m];

    private static readonly Gen<EdfContent> AnyContent = Gen.Select(
        Gen.Int[1, 4],
        Gen.Int[1, 40],
        Gen.Int[1, 6],
        Gen.Bool,
        Gen.Int[0, 4].Select(i => Durations[i]),
        Gen.Select(Gen.Double[0.01, 9000], Gen.Bool, Gen.Int[0, 9], Gen.Bool),
        AnyAnnotation.List[0, 8],
        Content);

    [Fact]
    public void WhatIsWrittenIsReadBack() => AnyContent.Sample(content =>
    {
        using MadeEdf file = new(content);
        using Recording recording = file.Open();

        Assert.Equal((content.Is24Bit ? "BDF" : "EDF") + (content.RecordStartsS.IsEmpty ? "+C" : "+D"), recording.Format);
        Assert.DoesNotContain(recording.Warnings, warning => !warning.Message.Contains("outside the data", StringComparison.Ordinal));
        Assert.Equal(
            content.Annotations.Order(Comparer<Annotation>.Create(Compare)),
            recording.Annotations.Order(Comparer<Annotation>.Create(Compare)));
        for (int s = 0; s < content.Signals.Length; s++)
        {
            EdfSignalContent signal = content.Signals[s];
            double[] wanted = new double[signal.SamplesPerRecord * content.Records];
            signal.Fill(0, wanted);
            double[] read = EdfCodes.Values(recording, s);
            Channel channel = recording.Channels[s];

            // A rail is calculated with the scale, so it may be off by the last bits.
            double slack = 1e-12 * Math.Abs(signal.PhysicalMin);
            Assert.InRange(channel.LowerRail!.Value, double.MinValue, Math.Min(signal.PhysicalMin, signal.PhysicalMax) + slack);
            Assert.InRange(channel.UpperRail!.Value, Math.Max(signal.PhysicalMin, signal.PhysicalMax) - slack, double.MaxValue);
            for (int i = 0; i < read.Length; i++)
            {
                double clamped = Math.Clamp(wanted[i], channel.LowerRail.Value, channel.UpperRail.Value);
                Assert.InRange(read[i] - clamped, -0.5001 * channel.Step, 0.5001 * channel.Step);
            }
        }
    });

    [Fact]
    public void WritingWhatWasReadGivesTheSameBytes() => AnyContent.Sample(content =>
    {
        using MadeEdf file = new(content);
        using Recording recording = file.Open();
        ImmutableArray<EdfSignalContent> again = [.. content.Signals.Select((signal, s) => signal with { Fill = EdfSignalContent.From(EdfCodes.Values(recording, s)) })];
        using MemoryStream stream = new();
        EdfWriter.Write(stream, content with { Signals = again });

        Assert.Equal(file.Bytes, stream.ToArray());
    });

    [Fact]
    public void TheHeaderIsTheOneOfThePublishedText()
    {
        using MadeEdf file = new();
        string header = Encoding.ASCII.GetString(file.Bytes, 0, 256);

        Assert.Equal(
            "0       " + "X X X X".PadRight(80) + "Startdate X X X X".PadRight(80) + "01.01.00" + "00.00.00" + "1024    " + "EDF+C".PadRight(44)
            + "3       " + "1       " + "3   ",
            header);
        Assert.Equal(1024 + (3 * 76), file.Bytes.Length);
        Assert.DoesNotContain(file.Bytes[..1024], b => b is < 32 or > 126);
    }

    [Theory]
    [InlineData(-37.96628460, false, "-37.9663")]
    [InlineData(-37.96628460, true, "-37.9662")]
    [InlineData(37.96628460, true, "37.96629")]
    [InlineData(500, true, "500")]
    [InlineData(-0.0004, false, "-0.0004")]
    [InlineData(12345678, true, "12345678")]
    [InlineData(1234567.5, true, "1234568")]
    [InlineData(-1234567, false, "-1234567")]
    public void LimitsAreRoundedOutwardsToEightCharacters(double value, bool isUp, string expected) =>
        Assert.Equal(expected, EdfLimit.Format(value, isUp));

    [Fact]
    public void SamplesBeyondTheLimitsLieAtTheRails()
    {
        using MadeEdf file = new(new EdfContent([new("EMG", -100, 100, 3, EdfSignalContent.From(new double[] { -1e9, double.PositiveInfinity, 0 }))], 1));

        Assert.Equal([-32768, 32767], EdfCodes.Read(file.Path, 0)[..2]);
    }

    [Fact]
    public void AFailedWriteLeavesNothing()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("channelaudit-edf-");
        try
        {
            string path = Path.Combine(folder.FullName, "made.edf");
            EdfContent content = new([new("EMG", -100, 100, 1, (_, samples) => samples[0] = double.NaN)], 1);

            Assert.Throws<InvalidOperationException>(() => EdfWriter.Write(path, content));
            Assert.Empty(folder.GetFiles());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void WhatTheFormatCannotHoldIsAProgrammingMistake()
    {
        EdfContent small = MadeEdf.Small();
        Refuses(small with { Signals = [MadeEdf.Signal("a label of 17 chr")] });
        Refuses(small with { Signals = [MadeEdf.Signal("EMG \u00B5")] });
        Refuses(small with { Signals = [MadeEdf.Signal("EMG") with { PhysicalMin = 500 }] });
        Refuses(small with { Signals = [MadeEdf.Signal("EMG") with { DigitalMin = -40000 }] });
        Refuses(small with { Signals = [MadeEdf.Signal("EMG") with { SamplesPerRecord = 0 }] });
        Refuses(small with { Records = 0 });
        Refuses(small with { RecordDurationS = 0 });
        Refuses(small with { RecordStartsS = [0, 1] });
        Refuses(small with { Annotations = [new(0, null, "a\u0014b")] });
    }

    private static void Refuses(EdfContent content) => Assert.ThrowsAny<ArgumentException>(() => EdfWriter.Write(Stream.Null, content));

    private static int Compare(Annotation a, Annotation b) =>
        (a.OnsetS, a.DurationS ?? -1).CompareTo((b.OnsetS, b.DurationS ?? -1)) is var order && order != 0 ? order : string.CompareOrdinal(a.Text, b.Text);

    private static EdfContent Content(
        int signals, int samplesPerRecord, int records, bool is24Bit, decimal durationS, (double Limit, bool Inverted, int Seed, bool Gaps) more, List<Annotation> annotations)
    {
        double low = more.Inverted ? more.Limit : -more.Limit;
        EdfSignalContent Make(int s) => new(
            string.Create(CultureInfo.InvariantCulture, $"EMG {s + 1}"),
            low * (s + 1),
            -low,
            samplesPerRecord * (s + 1),
            (first, samples) =>
            {
                for (int i = 0; i < samples.Length; i++)
                {
                    // Some samples lie beyond the limits.
                    samples[i] = 1.2 * more.Limit * Math.Sin(((first + i) * 0.37) + more.Seed + s);
                }
            });
        return new EdfContent([.. Enumerable.Range(0, signals).Select(Make)], records)
        {
            Is24Bit = is24Bit,
            RecordDurationS = durationS,
            RecordStartsS = more.Gaps ? [.. Enumerable.Range(0, records).Select(record => (record * 3 * durationS) + 0.125m)] : [],
            Annotations = [.. annotations],
        };
    }
}
