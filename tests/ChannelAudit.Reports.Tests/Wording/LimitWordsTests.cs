using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Tests.Wording;

/// <summary>Limits in words say what is in force, and can be read one way only.</summary>
public sealed class LimitWordsTests
{
    private static Criterion Swap => DefaultCriteria.All.For(ReasonCode.LeadSwap);

    [Fact]
    public void AReasonWithARuleOfItsOwnIsNotOff()
    {
        Assert.Equal("the same both ways round, each site answering the other's task (part of the rule)", LimitWords.Reject(Swap, LimitWords.Off));
        Assert.Equal(LimitWords.Off, LimitWords.Reject(Swap with { Questionable = [] }, LimitWords.Off));
    }

    [Fact]
    public void AlternativesOfSeveralLimitsStandInBrackets()
    {
        Assert.Equal("(swap_own \u2264 6 dB and swap_other \u2265 12 dB) or (swap_other \u2265 12 dB and swap_lead \u2265 6 dB)", LimitWords.Questionable(Swap, LimitWords.Off));
        Assert.Equal("swap_own \u2264 6 dB and swap_other \u2265 12 dB", LimitWords.Questionable(Swap with { Questionable = [Swap.Questionable[0]] }, LimitWords.Off));
    }
}
