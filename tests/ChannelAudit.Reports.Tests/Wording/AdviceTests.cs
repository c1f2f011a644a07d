using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Wording;

/// <summary>Every reason ends with what to do, for whoever records and for whoever scores.</summary>
public sealed class AdviceTests
{
    public static TheoryData<string> Codes => [.. ReasonCode.All, .. ReasonCode.Information];

    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryCodeHasAdviceForTheTechnicianAndForTheAnalyst(string code)
    {
        ReasonWord word = ReasonWords.All.Single(one => string.Equals(one.Code, code, StringComparison.Ordinal));

        Assert.EndsWith(".", word.WhatToDo, StringComparison.Ordinal);
        Assert.NotNull(ScoringAdvice.For(code));
        Assert.EndsWith(".", ScoringAdvice.For(code), StringComparison.Ordinal);
        Assert.NotEqual(word.WhatToDo, ScoringAdvice.For(code), StringComparer.Ordinal);
    }

    [Fact]
    public void EveryWordHasBoth() => Assert.All(ReasonWords.All, word => Assert.False(string.IsNullOrEmpty(ScoringAdvice.For(word.Code)), word.Code));

    /// <summary>The page of each reason with limits ends with both too; information has its own page.</summary>
    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryCodeHasASectionOnAPage(string code)
    {
        string docs = Path.Combine(Path.GetDirectoryName(RepositoryRoot.Fixture(string.Empty).TrimEnd(Path.DirectorySeparatorChar))!, "docs");
        string page = Path.Combine(docs, "measures", code + ".md");
        string text = File.Exists(page) ? File.ReadAllText(page) : File.ReadAllText(Path.Combine(docs, "information.md"));

        Assert.Contains(File.Exists(page) ? "## What to do" : $"## `{code}`", text, StringComparison.Ordinal);
        Assert.True(!File.Exists(page) || text[text.IndexOf("## What to do", StringComparison.Ordinal)..].Contains("For scoring: ", StringComparison.Ordinal), page);
    }
}
