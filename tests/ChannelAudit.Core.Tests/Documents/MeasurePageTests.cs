using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>The pages of the measures against the catalog and the default limits.</summary>
public sealed class MeasurePageTests
{
    private static readonly string[] Headings =
    [
        "What it measures",
        "Why it matters",
        "How it is computed",
        "Limits and where they come from",
        "When it is not assessed",
        "What it can be confused with",
        "What to do",
        "References",
    ];

    public static TheoryData<string> MeasurePages => [.. Pages.OfMeasures];

    public static TheoryData<string> ReasonsWithLimits =>
    [
        .. DefaultCriteria.All.All
            .Select(criterion => criterion.Reason)
            .Where(reason => ReasonCode.All.Contains(reason, StringComparer.Ordinal)),
    ];

    [Fact]
    public void EveryMeasureIsNamedOnAPage()
    {
        string[] texts = [.. Pages.OfMeasures.Select(Pages.Text)];

        string[] unnamed =
        [
            .. MeasureCatalog.OfChannels
                .Select(measure => measure.Name)
                .Where(name => !texts.Any(text => text.Contains($"`{name}` (", StringComparison.Ordinal))),
        ];

        Assert.Empty(unnamed);
    }

    [Fact]
    public void EveryMeasureOfABridgeIsNamedOnItsPage() => Assert.All(
        MeasureCatalog.OfDecisions.Where(measure => string.Equals(measure.Reason, ReasonCode.Bridge, StringComparison.Ordinal)),
        measure => Assert.Contains($"`{measure.Name}`", Pages.Text("docs/measures/bridge.md"), StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(MeasurePages))]
    public void EveryPageHasTheFixedHeadingsInOrder(string page)
    {
        string[] found =
        [
            .. Pages.Text(page).Split('\n')
                .Where(line => line.StartsWith("## ", StringComparison.Ordinal))
                .Select(line => line[3..].Trim()),
        ];

        Assert.Equal(Headings, found);
    }

    [Theory]
    [MemberData(nameof(ReasonsWithLimits))]
    public void EveryReasonWithLimitsHasAPageThatNamesItInItsTitle(string reason)
    {
        string title = Pages.Text($"docs/measures/{reason}.md").Split('\n')[0];

        Assert.Contains($"`{reason}`", title, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ReasonsWithLimits))]
    public void EveryReasonWithLimitsIsExplainedInTheReadme(string reason) =>
        Assert.Contains($"| `{reason}` |", Pages.Text("README.md"), StringComparison.Ordinal);
}
