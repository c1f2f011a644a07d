using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Figures;

/// <summary>The lines below a title: why, and what to do.</summary>
internal static class Advice
{
    /// <summary>The likely cause, with what is known beside it; empty without a cause.</summary>
    public static string Cause(string cause, string beside = "") =>
        cause.Length == 0 ? string.Empty : $"Likely cause: {cause.TrimEnd('.')}{(beside.Length > 0 ? "; " : string.Empty)}{beside}.";

    /// <summary>What to do about a reason, with the caution where the advice leads to skin.</summary>
    /// <param name="reason">The reason code.</param>
    /// <param name="more">What else to say before the caution.</param>
    public static string WhatToDo(string reason, string more = "")
    {
        ReasonWord word = ReasonWords.For(reason);
        string caution = word.TouchesSkin ? " Mind skin and eyes: local protocol comes first." : string.Empty;
        return $"What to do: {word.WhatToDo}{more}{caution}";
    }
}
