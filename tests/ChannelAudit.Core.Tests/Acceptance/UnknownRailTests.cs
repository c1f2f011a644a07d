using System.Globalization;
using ChannelAudit.Criteria;
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
        ChannelResult channel = Audited(double.PositiveInfinity);

        Assert.All(channel.Cells, cell => Assert.Contains(cell.NotAssessed, open => IsClipping(open.Reason)));
        Assert.Contains(channel.NotAssessed, open => IsClipping(open.Reason));
        Assert.All(channel.Cells.SelectMany(cell => cell.Measures).Where(one => IsOfRails(one.Value.Measure)), one => Assert.Null(one.Value.Value));
        Assert.DoesNotContain(channel.Cells, cell => cell.Reasons.Any(IsClipping));
    }

    [Fact]
    public void ARailThatTheSignalShowsIsJudged()
    {
        // 15 µV of noise beyond 20 µV on either side: 18 % of a Gaussian, far above the 1 % that rejects.
        ChannelResult channel = Audited(20);

        Assert.All(channel.Cells, cell => Assert.Equal(Grade.Reject, cell.Verdict));
        Assert.All(channel.Cells, cell => Assert.Contains(cell.Reasons, IsClipping));
        Assert.DoesNotContain(channel.NotAssessed, open => IsClipping(open.Reason));
    }

    private static bool IsClipping(string reason) => string.Equals(reason, "clipping", StringComparison.Ordinal);

    private static bool IsOfRails(string measure) => measure is "clipped" or "clipped_run" or "peak_use" or "headroom";

    private static ChannelResult Audited(double railUv)
    {
        using TemporaryFolder folder = new();
        Pcg32 random = new(8801);
        IEnumerable<string> rows = Enumerable.Range(0, 20_000)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"{i / 1000.0:0.000}\t{Math.Clamp(15 * random.NextGaussian(), -railUv, railUv):0.000}"));
        string path = folder.Write("noise.tsv", "time\tcheek\n" + string.Join('\n', rows) + "\n");
        RecordingResult result = RecordingAudit.Of(
            new RecordingEntry("noise", path, "noise.tsv"), StudySetup.Empty, DefaultCriteria.All, null, CancellationToken.None);
        return Assert.Single(result.Channels);
    }
}
