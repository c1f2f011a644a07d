using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Tests;

/// <summary>What is other than the rest in an invented study.</summary>
internal static class SampleStudy
{
    /// <summary>One finding of a recording, one of many, one of a channel with a hostile name.</summary>
    public static ImmutableArray<StudyFinding> Odd { get; } =
    [
        new(OddKind.SameSignal, ["p02", "p09"], null, "both hold the same signal: cheek, in the second 1000 times as large; which is the copy the signals do not say", "Find out whose recording it is."),
        new(OddKind.Rate, [.. Enumerable.Range(1, 9).Select(number => FormattableString.Invariant($"day2+p{number:00}"))], null, "1000 Hz, where 40 of 49 recordings have 2000 Hz", "Bring all to one rate."),
        new(OddKind.Gain, ["p04"], "<b>brow</b>\u001b[31m", "about 10 times the others': 15 against 1.5 at rest", "Compare gain and unit."),
    ];

    /// <summary>A summary of a channel with everything that one can have.</summary>
    public static ChannelSignal Signal { get; } = new()
    {
        Unit = "uV",
        HighpassHz = 0,
        LowpassHz = 500,
        NotchesHz = [50, 150.5],
        LevelLow = 1.0 / 3,
        LevelMiddle = 2,
        LevelHigh = 30,
        LowDb = -12.25,
        HighDb = null,
        SwingsUp = 12,
        SwingsDown = 1,
        Print = "0a1bffff00009c31",
    };
}
