using ChannelAudit.Findings;
using ChannelAudit.Measures;

namespace ChannelAudit.Reports.Wording;

/// <summary>What a finding does to the score in words: <c>adds 1.8 µV to 3.1 (+58 %)</c>.</summary>
internal static class EffectWords
{
    /// <summary>The phrase; empty for a reason that says nothing of the amplitude.</summary>
    public static string Of(ScoreEffect? effect) => effect switch
    {
        null => string.Empty,
        { Percent: not { } } => $"not assessed: {effect.Note}",
        { Percent: { } percent } => Amount(effect, percent) + (effect.Note is { } note ? $"; {note}" : string.Empty),
    };

    private static string Amount(ScoreEffect effect, double percent)
    {
        if (percent == 0)
        {
            return "changes no amplitude";
        }

        bool adds = percent > 0;
        return !ScoreShift.IsAtMost(percent) && effect is { Microvolts: { } uv, WithoutUv: { } without }
            ? $"{(adds ? "adds" : "takes")} {Quantities.Short(Math.Abs(uv))} \u00B5V {(adds ? "to" : "from")} {Quantities.Short(without)} ({(adds ? "+" : "-")}{Share(percent)})"
            : Shift(percent);
    }

    /// <summary>A shift without amplitudes: <c>adds 58 %</c>, <c>takes 4 %</c>, <c>adds more than 9900 %</c>.</summary>
    /// <param name="percent">The shift, in % of the score without the fault.</param>
    public static string Shift(double percent) => $"{(percent < 0 ? "takes" : "adds")} {Share(percent)}";

    private static string Share(double percent) => ScoreShift.IsAtMost(percent)
        ? $"more than {Quantities.Short(ScoreShift.MostPercent)} %"
        : $"{Quantities.Short(Math.Abs(percent))} %";
}
