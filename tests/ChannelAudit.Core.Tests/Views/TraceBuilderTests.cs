using ChannelAudit.Views;
using Xunit;

namespace ChannelAudit.Core.Tests.Views;

/// <summary>The extremes of columns, counted by hand and by a direct loop.</summary>
public sealed class TraceBuilderTests
{
    [Fact]
    public void EachColumnHoldsItsOwnExtremes()
    {
        TraceBuilder builder = new(10, 20, 4);
        builder.Add([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], 9);
        Trace trace = builder.Finish(10);

        // Ten samples, 1 to 10, in four columns: sample i belongs to column 4 i / 10.
        Assert.Equal([1, 4, 6, 9], trace.Least.ToArray());
        Assert.Equal([3, 5, 8, 10], trace.Greatest.ToArray());
        Assert.Equal((1, 2), (trace.FromS, trace.ToS));
        Assert.Equal(1.125, trace.TimeOf(0), 12);
    }

    [Theory]
    [InlineData(1000, 7, 64)]
    [InlineData(997, 100, 33)]
    [InlineData(5, 100, 2)]
    public void BlocksOfAnyLengthGiveTheSame(int length, int columns, int block)
    {
        double[] samples = [.. Enumerable.Range(0, length).Select(i => Math.Sin(i * i * 0.37))];
        TraceBuilder inOne = new(0, length, columns);
        TraceBuilder inBlocks = new(0, length, columns);
        inOne.Add(samples, 0);
        for (int start = 0; start < length; start += block)
        {
            inBlocks.Add(samples.AsSpan(start, Math.Min(block, length - start)), start);
        }

        int count = Math.Min(columns, length);
        double[] greatest = [.. Enumerable.Range(0, count).Select(column => samples.Where((_, i) => (long)i * count / length == column).Max())];
        Assert.Equal(greatest, inOne.Finish(1).Greatest.ToArray());
        Assert.Equal(greatest, inBlocks.Finish(1).Greatest.ToArray());
    }

    [Fact]
    public void AGapLeavesItsColumnsEmpty()
    {
        TraceBuilder builder = new(0, 40, 4);
        builder.Add(new double[10], 0);
        builder.Add(new double[10], 30);

        Assert.Equal([false, true, true, false], builder.Finish(1).Least.Select(double.IsNaN).ToArray());
    }
}
