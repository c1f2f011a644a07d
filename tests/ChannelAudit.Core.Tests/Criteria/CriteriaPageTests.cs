using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

public sealed class CriteriaPageTests
{
    [Fact]
    public void TheTableOfThePageIsTheProgramsOwn()
    {
        string[] rows = [.. DefaultCriteria.All.All.SelectMany(criterion => CriterionLevel.Of(criterion.Reason).Select(
            level => $"| `{criterion.Reason}` | `{level.Key}` | {Words(level.Get(criterion))} |"))];

        Assert.Equal(["| reason | list | limits |", "|---|---|---|", .. rows], DocumentPart.Between("criteria.md", "limits"));
    }

    [Fact]
    public void TheExampleOfThePageIsInOrder() =>
        Assert.Equal(4, CriteriaDifferences.Lines(DefaultCriteria.All, CriteriaFile.Parse(Assert.Single(DocumentPart.Blocks("criteria.md", "toml")), "lab.toml")).Length);

    private static string Words(ImmutableArray<LimitSet> sets) => sets.IsEmpty
        ? "off"
        : string.Join(" or ", sets.Select(set => $"`{CriteriaText.Sets([set])[1..^1]}`"));
}
