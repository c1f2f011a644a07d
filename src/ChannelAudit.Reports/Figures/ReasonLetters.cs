using System.Collections.Frozen;
using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Figures;

/// <summary>The letter and the short name of each reason in figures; <c>docs/guides/reading-the-ribbon.md</c> shows the same list.</summary>
public static class ReasonLetters
{
    /// <summary>Stands for a code without a letter of its own.</summary>
    public const string Other = "Z";

    /// <summary>The code under which a channel has too large a share of bad trials.</summary>
    internal const string ManyBadTrials = "bad-trials";

    /// <summary>All letters, in the order of <see cref="ReasonCode.All"/>, then the share of bad trials.</summary>
    public static ImmutableArray<ReasonLetter> All { get; } =
    [
        new(ReasonCode.Bridge, "B", "sites joined"),
        new(ReasonCode.Dropout, "D", "samples missing"),
        new(ReasonCode.Flatline, "F", "flat"),
        new(ReasonCode.Clipping, "C", "clipping"),
        new(ReasonCode.LineNoise, "L", "mains"),
        new(ReasonCode.NarrowBand, "N", "narrow peak"),
        new(ReasonCode.LowFrequency, "M", "motion"),
        new(ReasonCode.Pops, "P", "pops"),
        new(ReasonCode.NoiseFloor, "H", "hiss at rest"),
        new(ReasonCode.Drift, "R", "drift"),
        new(ReasonCode.WeakResponse, "W", "weak response"),
        new(ReasonCode.LeadSwap, "S", "leads swapped"),
        new(ReasonCode.UnusableInput, "U", "unusable input"),
        new(ManyBadTrials, "T", "many bad trials"),
    ];

    private static readonly FrozenDictionary<string, ReasonLetter> ByCode = All.ToFrozenDictionary(letter => letter.Code, StringComparer.Ordinal);

    /// <summary>The letter of a reason code; <see cref="Other"/> for a code that has none.</summary>
    public static string For(string code) => ByCode.TryGetValue(code, out ReasonLetter? letter) ? letter.Letter : Other;

    /// <summary>The short name of a reason code; the code itself when it has none.</summary>
    public static string NameOf(string code) => ByCode.TryGetValue(code, out ReasonLetter? letter) ? letter.Name : code;

    /// <summary>The place of a code in the order in which equals are listed; unknown ones come last.</summary>
    internal static int Rank(string code)
    {
        int place = All.IndexOf(ByCode.GetValueOrDefault(code)!);
        return place < 0 ? All.Length : place;
    }
}
