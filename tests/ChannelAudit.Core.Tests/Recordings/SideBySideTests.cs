using System.Collections.Concurrent;
using ChannelAudit.Core.Tests.Recordings.Edf;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Tests.Recordings;

/// <summary>Two readers of one recording, and what happens to work that fails.</summary>
public sealed class SideBySideTests
{
    [Fact]
    public void TwoReadersReadTheSame()
    {
        using MadeEdf file = Made();
        using Recording opened = file.Open();
        Recording recording = opened.OnTwoThreads;
        double[][] read = new double[2][];
        int[] threads = new int[2];

        SideBySide.Run(recording, reader => Read(reader, 0), reader => Read(reader, 1));

        Assert.NotSame(recording.Samples, recording.Beside!.Samples);
        Assert.NotEqual(threads[0], threads[1]);
        Assert.Equal(read[0], read[1]);
        Assert.Contains(read[0], value => value != 0);

        void Read(Recording reader, int place)
        {
            threads[place] = Environment.CurrentManagedThreadId;
            read[place] = new double[1000];
            for (int at = 0; at < 1000; at += 10)
            {
                reader.Samples.Read(0, at, read[place].AsSpan(at, 10));
            }
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void EveryItemIsWorkedOnOnce(bool onTwoThreads)
    {
        using MadeEdf file = Made();
        using Recording opened = file.Open();
        Recording recording = onTwoThreads ? opened.OnTwoThreads : opened;
        ConcurrentBag<int> done = [];
        int prepared = 0;

        SideBySide.Each(recording, 100, _ =>
        {
            Interlocked.Increment(ref prepared);
            return done.Add;
        });

        Assert.Equal(Enumerable.Range(0, 100), done.Order());
        Assert.InRange(prepared, 1, onTwoThreads ? 2 : 1);
    }

    [Fact]
    public void AFaultOfTheOtherThreadIsThrownAsItIsWhenBothHaveEnded()
    {
        using MadeEdf file = Made();
        using Recording opened = file.Open();
        Recording recording = opened.OnTwoThreads;
        bool ended = false;

        InvalidOperationException fault = Assert.Throws<InvalidOperationException>(
            () => SideBySide.Run(recording, _ => ended = true, _ => throw new InvalidOperationException("there")));

        Assert.Equal("there", fault.Message);
        Assert.True(ended);
    }

    [Fact]
    public void OfTwoFaultsThatOfThisThreadIsThrown()
    {
        using MadeEdf file = Made();
        using Recording opened = file.Open();
        Recording recording = opened.OnTwoThreads;

        InvalidOperationException fault = Assert.Throws<InvalidOperationException>(
            () => SideBySide.Run(recording, _ => throw new InvalidOperationException("here"), _ => throw new InvalidOperationException("there")));

        Assert.Equal("here", fault.Message);
    }

    private static MadeEdf Made() => new(new EdfContent([MadeEdf.Signal("a") with { SamplesPerRecord = 100 }], 10) { RecordDurationS = 1 });
}
