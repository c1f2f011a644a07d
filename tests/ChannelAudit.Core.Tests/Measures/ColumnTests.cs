using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>A list that goes to a file when it is long: nobody who reads it sees where an entry lies.</summary>
public sealed class ColumnTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(16_383)]
    [InlineData(16_384)]
    [InlineData(16_385)]
    [InlineData(50_000)]
    public void WhatWasAddedIsRead(int count)
    {
        Column<double> column = new();
        for (int i = 0; i < count; i++)
        {
            column.Add(i * 0.5);
        }

        Assert.Equal(count, column.Count);
        Assert.Equal(Enumerable.Range(0, count).Select(i => i * 0.5), column);
        Assert.Throws<ArgumentOutOfRangeException>(() => column[count]);
        Assert.Throws<ArgumentOutOfRangeException>(() => column[-1]);
    }

    [Theory]
    [InlineData(2047)]
    [InlineData(2048)]
    [InlineData(9000)]
    public void HowMuchStaysInMemoryMayBeAskedFor(int count)
    {
        Column<double> column = new(new Spill(), 2048);
        for (int i = 0; i < count; i++)
        {
            column.Add(i * 0.5);
        }

        Assert.Equal(Enumerable.Range(0, count).Select(i => i * 0.5), column);
    }

    [Fact]
    public void AnyOrderReadsTheSame()
    {
        Column<PeakReading> column = new();
        for (int i = 0; i < 40_000; i++)
        {
            column.Add(new PeakReading(i, -i, 50));
        }

        int[] order = [39_999, 0, 20_000, 1023, 1024, 38_911, 38_912, 16_384, 39_998];
        Assert.Equal([.. order.Select(i => (double)i)], order.Select(i => column[i].Power));
        Assert.Equal([.. order.Select(i => -(double)i)], order.Select(i => column[i].StandardError));
    }

    [Fact]
    public void ColumnsOfOneFileKeepApart()
    {
        Spill spill = new();
        Column<float> one = new(spill);
        Column<float> other = new(spill);
        for (int i = 0; i < 30_000; i++)
        {
            one.Add(i);
            other.Add(-i);
        }

        Assert.All(Enumerable.Range(0, 300), i => Assert.Equal((100f * i, -100f * i), (one[100 * i], other[100 * i])));
    }

    [Fact]
    public void ADensityComesBackAsItWas()
    {
        Spill spill = new();
        KeptDensity first = new(spill, [1, 2.5, 3]);
        KeptDensity second = new(spill, [4]);

        Assert.Equal([1, 2.5, 3], first.Read());
        Assert.Equal([4], second.Read());
    }
}
