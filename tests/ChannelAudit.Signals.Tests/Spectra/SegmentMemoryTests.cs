using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Spectra;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>What is done for every segment and block of a recording takes no memory, so that its length costs none.</summary>
public sealed class SegmentMemoryTests
{
    private const int Length = 2000;

    private readonly double[] samples = NoiseOf.Seed(1, 4 * Length);
    private readonly double[] room = new double[4 * Length];
    private readonly double[] sums = new double[RunSums.Runs];
    private readonly SegmentBatch batch = new(Length, Length, 2);
    private readonly PowerAccumulator power;
    private readonly CrossAccumulator cross;
    private readonly PairAccumulator pair = new(30, 421);
    private readonly RectifiedFilter filter = new(Butterworth.HighPassSections(4, 20, Length));

    public SegmentMemoryTests() => (power, cross) = (new PowerAccumulator(batch.Bins), new CrossAccumulator(0, batch.Bins));

    [Fact]
    public void NoSegmentTakesMemory()
    {
        // The runtime, too, takes memory on the thread of a test, once in a while; what the work takes it takes every time.
        var least = long.MaxValue;
        for (var round = 0; round < 10; round++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Work();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
    }

    private void Work()
    {
        batch.Load(0, samples, Length / 2, 4);
        batch.Load(1, samples, Length / 2, 3);
        batch.Densities(0, room);
        power.Add(batch, 0);
        cross.Add(batch, 0, 1, 5);
        pair.Add(batch, 0, 1, 7);
        power.Density(batch, room);
        SettledHighPass.Filter(Butterworth.HighPass(20, Length), samples, 100, room.AsSpan(100));
        filter.Filter(samples, room);
        Extremes.Of(samples);
        RunSums.Of(samples, 100, sums);
        RunSums.OfMagnitudes(samples, 100, sums);
    }
}
