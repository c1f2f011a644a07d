using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

public sealed class EdfSampleSourceTests
{
    [Theory]
    [InlineData(7, 5000, false)] // records of a few bytes, many in a block
    [InlineData(2000, 700, false)] // long ranges are read around the blocks
    [InlineData(2000, 700, true)]
    [InlineData(700_000, 3, true)] // a record larger than a block is read in slices
    public void AnyRangeInAnyOrderGivesTheSameSamples(int samplesPerRecord, int records, bool is24Bit)
    {
        // Each sample tells its channel and index, hand-made: a step of 1 so that codes are values.
        EdfSignalContent Counting(int channel) => new("EMG " + (char)('a' + channel), -32768, 32767, samplesPerRecord, (first, samples) =>
        {
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] = Expected(channel, first + i);
            }
        })
        { DigitalMin = -32768, DigitalMax = 32767 };
        using MadeEdf file = new(new EdfContent([Counting(0), Counting(1), Counting(2)], records) { Is24Bit = is24Bit });
        using Recording recording = file.Open();
        long total = (long)samplesPerRecord * records;

        // A fixed walk over starts and lengths, channels in turn, then everything at once.
        double[] samples = new double[total];
        for (int step = 0; step < 60; step++)
        {
            long start = step * 2_654_435_761L % total;
            int length = (int)Math.Min(total - start, 1 + (step * 40_503L % 90_000));
            Check(recording, step % 3, start, samples.AsSpan(0, length));
        }

        Check(recording, 1, 0, samples);
        Check(recording, 2, total, []);
    }

    [Fact]
    public void ARangeOutsideTheSamplesIsAProgrammingMistake()
    {
        using MadeEdf file = new();
        using Recording recording = file.Open();

        Assert.Throws<ArgumentOutOfRangeException>(() => recording.Samples.Read(0, 10, new double[3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => recording.Samples.Read(0, -1, new double[3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => recording.Samples.Read(3, 0, new double[1]));
    }

    [Fact]
    public void AFileThatShrinksWhileItIsReadIsAFaultOfTheFile()
    {
        using MadeEdf file = new();
        using Recording recording = file.Open();
        using (FileStream stream = new(file.Path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
        {
            stream.SetLength(1100);
        }

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => recording.Samples.Read(0, 0, new double[12]));
        Assert.Equal("made.edf, byte 1100: the file ended while it was being read", fault.Message);
    }

    [Fact]
    public void MemoryDoesNotGrowWithTheLengthOfTheFile()
    {
        long brief = AllocatedByReading(300);
        long lengthy = AllocatedByReading(1200);

        // The longer file has 7.2 MB more samples; only its annotation lists and warnings may cost something.
        Assert.InRange(lengthy - brief, long.MinValue, 1_500_000);
        Assert.InRange(lengthy, 0, 8_000_000);
    }

    private static long AllocatedByReading(int seconds)
    {
        using MadeEdf file = new(new EdfContent([MadeEdf.Signal("a") with { SamplesPerRecord = 2000 }, MadeEdf.Signal("b") with { SamplesPerRecord = 2000 }], seconds)
        {
            RecordDurationS = 1,
        });
        file.Open().Dispose();
        double[] window = new double[6000];
        long before = GC.GetAllocatedBytesForCurrentThread();
        using Recording recording = EdfReader.Open(file.Path, new ReadOptions());
        for (long start = 0; start < 2000L * seconds; start += window.Length)
        {
            recording.Samples.Read(0, start, window);
            recording.Samples.Read(1, start, window);
        }

        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static void Check(Recording recording, int channel, long start, Span<double> samples)
    {
        samples.Clear();
        recording.Samples.Read(channel, start, samples);
        for (int i = 0; i < samples.Length; i++)
        {
            if (samples[i] != Expected(channel, start + i))
            {
                Assert.Fail(FormattableString.Invariant($"channel {channel}, sample {start + i}: {samples[i]}"));
            }
        }
    }

    private static double Expected(int channel, long index) => (((index * 31) + (channel * 17)) % 65536) - 32768;
}
