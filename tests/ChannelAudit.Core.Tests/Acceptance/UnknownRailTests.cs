using System.Globalization;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Random;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Text states no rails. Whether it was cut off is known only when the samples pile up; truth: what the test did to the noise.</summary>
public sealed class UnknownRailTests
{
    [Fact]
    public void WithoutARailClippingIsNotAssessed()
    {
        ChannelResult channel = Audited((_, uv) => uv);

        Assert.All(channel.Cells, cell => Assert.Contains(cell.NotAssessed, open => IsClipping(open.Reason)));
        Assert.Contains(channel.NotAssessed, open => IsClipping(open.Reason));
        MeasureValue[] ofRails = [.. channel.Cells.SelectMany(cell => cell.Measures).Concat(channel.Measures).Select(one => one.Value).Where(one => IsOfRails(one.Measure))];
        Assert.Equal(4 * (channel.Cells.Length + 1), ofRails.Length);
        Assert.All(ofRails, one => Assert.Equal((null, "the file states no rail and the signal shows none"), (one.Value, one.Note)));
        Assert.All(channel.NotAssessed.Where(open => IsClipping(open.Reason)), open => Assert.Equal("the file states no rail and the signal shows none", open.Cause));
        Assert.DoesNotContain(channel.Cells, cell => cell.Reasons.Any(IsClipping));
    }

    [Fact]
    public void ARailThatTheSignalShowsIsJudged()
    {
        // 15 µV of noise beyond 20 µV on either side: 18 % of a Gaussian, far above the 1 % that rejects.
        ChannelResult channel = Audited((_, uv) => Math.Clamp(uv, -20, 20));

        Assert.All(channel.Cells, cell => Assert.Equal(Grade.Reject, cell.Verdict));
        Assert.All(channel.Cells, cell => Assert.Contains(cell.Reasons, IsClipping));
        Assert.DoesNotContain(channel.NotAssessed, open => IsClipping(open.Reason));
    }

    /// <summary>6 s of the first 10 s lie at the rail, hence its median: no room is left to be used. The other 10 s leave some.</summary>
    [Fact]
    public void WhereTheLevelIsAtTheRailThatIsTheCause()
    {
        ChannelResult channel = Audited((second, uv) => second < 6 ? 20 : Math.Clamp(uv, -20, 20));

        Assert.Equal((null, "the level is at a rail"), Found(channel.Cells[0], "peak_use"));
        Assert.InRange(Found(channel.Cells[1], "peak_use").Value!.Value, 95, 105);
    }

    /// <summary>Headroom is a share of the rail's distance from zero, which is none here.</summary>
    [Fact]
    public void ARailAtZeroIsTheCauseOfNoHeadroom()
    {
        ChannelResult channel = Audited((_, uv) => Math.Max(0, uv + 5));

        Assert.All(channel.Cells, cell => Assert.NotNull(Found(cell, "clipped").Value));
        Assert.All(channel.Cells, cell => Assert.Equal((null, "the only rail is at zero"), Found(cell, "headroom")));
    }

    private static (double? Value, string? Note) Found(CellResult cell, string measure)
    {
        MeasureValue found = cell.Measures.Single(one => string.Equals(one.Value.Measure, measure, StringComparison.Ordinal)).Value;
        return (found.Value, found.Note);
    }

    private static bool IsClipping(string reason) => string.Equals(reason, "clipping", StringComparison.Ordinal);

    private static bool IsOfRails(string measure) => measure is "clipped" or "clipped_run" or "peak_use" or "headroom";

    private static ChannelResult Audited(Func<int, double, double> change)
    {
        using TemporaryFolder folder = new();
        Pcg32 random = new(8801);
        IEnumerable<string> rows = Enumerable.Range(0, 20_000)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000}\t{change(i / 1000, 15 * random.NextGaussian()):0.000}"));
        string path = folder.Write("noise.tsv", "time\tcheek\n" + string.Join('\n', rows) + "\n");
        RecordingResult result = RecordingAudit.Of(
            new RecordingEntry("noise", path, "noise.tsv"), StudySetup.Empty, DefaultCriteria.All, null, CancellationToken.None);
        return Assert.Single(result.Channels);
    }
}
