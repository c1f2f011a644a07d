using System.Collections.Frozen;
using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Figures;

/// <summary>The letter of each reason in figures; its words are those of all outputs. <c>docs/guides/reading-the-ribbon.md</c> shows the same list.</summary>
public static class ReasonLetters
{
    /// <summary>Stands for a code without a letter of its own.</summary>
    public const string Other = "Z";

    /// <summary>The code under which a channel has too large a share of bad trials.</summary>
    internal const string ManyBadTrials = "bad-trials";

    /// <summary>All letters, in the order of <see cref="ReasonCode.All"/>, then the share of bad trials.</summary>
    public static ImmutableArray<ReasonLetter> All { get; } =
    [
        new(ReasonCode.Bridge, "B"),
        new(ReasonCode.Dropout, "D"),
        new(ReasonCode.Flatline, "F"),
        new(ReasonCode.Clipping, "C"),
        new(ReasonCode.LineNoise, "L"),
        new(ReasonCode.NarrowBand, "N"),
        new(ReasonCode.LowFrequency, "M"),
        new(ReasonCode.Pops, "P"),
        new(ReasonCode.NoiseFloor, "H"),
        new(ReasonCode.Drift, "R"),
        new(ReasonCode.WeakResponse, "W"),
        new(ReasonCode.LeadSwap, "S"),
        new(ReasonCode.UnusableInput, "U"),
        new(ManyBadTrials, "T"),
    ];

    private static readonly FrozenDictionary<string, ReasonLetter> ByCode = All.ToFrozenDictionary(letter => letter.Code, StringComparer.Ordinal);

    /// <summary>The letter of a reason code; <see cref="Other"/> for a code that has none.</summary>
    public static string For(string code) => ByCode.TryGetValue(code, out ReasonLetter? letter) ? letter.Letter : Other;

    /// <summary>The place of a code in the order in which equals are listed; unknown ones come last.</summary>
    internal static int Rank(string code)
    {
        int place = All.IndexOf(ByCode.GetValueOrDefault(code)!);
        return place < 0 ? All.Length : place;
    }
}
