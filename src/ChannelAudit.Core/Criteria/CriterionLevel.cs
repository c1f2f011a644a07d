using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>One of the four lists of limits that a criterion can have, with its key in the file.</summary>
internal sealed record CriterionLevel
{
    private CriterionLevel(
        string key, Func<Criterion, ImmutableArray<LimitSet>> get, Func<Criterion, ImmutableArray<LimitSet>, Criterion> with)
    {
        Key = key;
        Get = get;
        With = with;
    }

    /// <summary>A trial is questionable.</summary>
    public static CriterionLevel Questionable { get; } = new("questionable", c => c.Questionable, (c, sets) => c with { Questionable = sets });

    /// <summary>A trial is rejected.</summary>
    public static CriterionLevel Reject { get; } = new("reject", c => c.Reject, (c, sets) => c with { Reject = sets });

    /// <summary>The channel is questionable.</summary>
    public static CriterionLevel ChannelQuestionable { get; } =
        new("channel_questionable", c => c.ChannelQuestionable, (c, sets) => c with { ChannelQuestionable = sets });

    /// <summary>The channel is rejected.</summary>
    public static CriterionLevel ChannelReject { get; } =
        new("channel_reject", c => c.ChannelReject, (c, sets) => c with { ChannelReject = sets });

    /// <summary>All four in the order in which they are shown.</summary>
    public static ImmutableArray<CriterionLevel> All { get; } = [Questionable, Reject, ChannelQuestionable, ChannelReject];

    /// <summary>The key in the file.</summary>
    public string Key { get; }

    /// <summary>The list in a criterion.</summary>
    public Func<Criterion, ImmutableArray<LimitSet>> Get { get; }

    /// <summary>A criterion with another list.</summary>
    public Func<Criterion, ImmutableArray<LimitSet>, Criterion> With { get; }

    /// <summary>The lists that a reason knows: a bridge is found in a pair, a swap between sites, the share of bad trials in a channel.</summary>
    public static ImmutableArray<CriterionLevel> Of(string reason) => reason switch
    {
        Findings.ReasonCode.Bridge => [Questionable, Reject],
        Findings.ReasonCode.LeadSwap => [Questionable],
        DefaultCriteria.BadTrials => [ChannelQuestionable, ChannelReject],
        _ => All,
    };
}
