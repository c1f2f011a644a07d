using ChannelAudit.Findings;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Verdicts;

public sealed class BadTrialWordsTests
{
    [Theory]
    [InlineData(Grade.Reject, 9, 29, "clipping", "9 of 29 trials are rejected, mostly for clipping")]
    [InlineData(Grade.Reject, 1, 1, "drift", "1 of 1 trial is rejected, for drift")]
    [InlineData(Grade.Reject, 1, 2, "drift", "1 of 2 trials is rejected, for drift")]
    [InlineData(Grade.Questionable, 1, 1, "drift", "1 of 1 trial did not pass, for drift")]
    [InlineData(Grade.Questionable, 12, 29, "drift", "12 of 29 trials did not pass, mostly for drift")]
    [InlineData(Grade.Questionable, 3, 8, "", "3 of 8 trials did not pass")]
    [InlineData(Grade.Reject, 9, 29, "clipping drift", "9 of 29 trials are rejected, mostly for clipping, drift")]
    public void OneAndManyAreToldApart(Grade share, int bad, int all, string reasons, string text) =>
        Assert.Equal(text, BadTrialWords.Of(share, bad, all, [.. reasons.Split(' ', StringSplitOptions.RemoveEmptyEntries)]));
}
