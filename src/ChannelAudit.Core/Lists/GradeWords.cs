using System.Collections.Frozen;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Lists;

/// <summary>What people write for a verdict.</summary>
public static class GradeWords
{
    /// <summary>The words that are understood, whatever their case.</summary>
    public static FrozenDictionary<string, Grade> All { get; } = new Dictionary<string, Grade>(StringComparer.OrdinalIgnoreCase)
    {
        ["pass"] = Grade.Pass,
        ["good"] = Grade.Pass,
        ["ok"] = Grade.Pass,
        ["keep"] = Grade.Pass,
        ["usable"] = Grade.Pass,
        ["questionable"] = Grade.Questionable,
        ["unsure"] = Grade.Questionable,
        ["doubtful"] = Grade.Questionable,
        ["reject"] = Grade.Reject,
        ["bad"] = Grade.Reject,
        ["exclude"] = Grade.Reject,
        ["unusable"] = Grade.Reject,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>The words in the order in which they are told.</summary>
    internal const string List = "pass (good, ok, keep, usable), questionable (unsure, doubtful) or reject (bad, exclude, unusable)";
}
