using System.Diagnostics;
using System.Text.Json.Nodes;
using Xunit;
using Xunit.Abstractions;

namespace ChannelAudit.Review.Tests;

/// <summary>How long a cell takes, and what 5,000 of them leave behind; counted for the whole process, so that no other test may run beside it.</summary>
[Collection(Alone.Name)]
public sealed class LongReviewTests(ITestOutputHelper output)
{
    private const int Cells = 5000;
    private const int Look = 250;

    // The store of pictures is full by then, every recording has been open.
    private const int Settled = 3000;
    private const long MostGrowth = 24 << 20;

    [Fact]
    public async Task ACellOfFifteenMinutesIsMadeInAFifthOfASecondAndMemoryStaysFlat()
    {
        using LongReviewFolder folder = new(recordings: 4);
        await using ReviewClient client = await ReviewClient.Start(folder.Options);
        List<double> milliseconds = [];
        List<long> looks = [];
        for (int n = 1; n <= Cells; n++)
        {
            long from = Stopwatch.GetTimestamp();
            JsonNode cell = await client.Get(FormattableString.Invariant($"/cell?n={n}"));
            if (n % 10 == 0)
            {
                string range = FormattableString.Invariant($"from={(double)cell["fromS"]!}&to={(double)cell["toS"]!}");
                byte[] png = await client.Bytes(FormattableString.Invariant($"/picture?n={n}&{range}&w=860&h=440&x=1"));
                milliseconds.Add(Stopwatch.GetElapsedTime(from).TotalMilliseconds);
                Assert.True(png.Length > 1000);
            }

            if (n >= Settled && n % Look == 0)
            {
                looks.Add(GC.GetTotalMemory(forceFullCollection: true));
            }
        }

        // What the runtime keeps ready comes and goes by 20 MB, in its own time; what is never given back is there at the best of times, too.
        long grown = looks.TakeLast(looks.Count / 2).Min() - looks.Take(looks.Count / 2).Min();
        double median = milliseconds.Order().ElementAt(milliseconds.Count / 2);
        output.WriteLine(FormattableString.Invariant($"median {median:0} ms for a cell with its picture, {grown / 1024} kB grown over {(Cells - Settled) / 2} cells"));
        Assert.True(median < 200, FormattableString.Invariant($"median {median:0} ms"));
        Assert.True(grown < MostGrowth, FormattableString.Invariant($"{grown} bytes grown"));
    }
}
