using System.Globalization;
using System.Text.RegularExpressions;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>Limits printed on the pages are the limits in force.</summary>
public sealed partial class LimitFigureTests
{
    public static TheoryData<string> ReasonsWithLimits =>
    [
        .. DefaultCriteria.All.All
            .Select(criterion => criterion.Reason)
            .Where(reason => ReasonCode.All.Contains(reason, StringComparer.Ordinal)),
    ];

    [Theory]
    [MemberData(nameof(ReasonsWithLimits))]
    public void APageStatesEveryDefaultLimitOfItsReasonAndNoOther(string reason)
    {
        string section = Section(Pages.Text($"docs/measures/{reason}.md"));
        Criterion criterion = DefaultCriteria.All.For(reason);
        (string Measure, double Value)[] inForce =
        [
            .. criterion.Questionable.Concat(criterion.Reject).Concat(criterion.ChannelQuestionable).Concat(criterion.ChannelReject)
                .SelectMany(set => set.Limits)
                .Select(limit => (limit.Measure, limit.Value))
                .Distinct()
                .Order(),
        ];

        (string Measure, double Value)[] printed =
        [
            .. Printed().Matches(section)
                .Select(match => (match.Groups["measure"].Value, double.Parse(match.Groups["value"].Value, CultureInfo.InvariantCulture)))
                .Distinct()
                .Order(),
        ];

        Assert.Equal(inForce, printed);
    }

    private static string Section(string page)
    {
        int from = page.IndexOf("## Limits and where they come from", StringComparison.Ordinal);
        int to = page.IndexOf("\n## ", from, StringComparison.Ordinal);
        return page[from..to];
    }

    [GeneratedRegex("`(?<measure>[a-z_0-9]+)` (?:≥|≤) (?<value>-?[0-9.]*[0-9])", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Printed();
}
