using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Wording;

/// <summary>What a finding does to the score in words: <c>adds 1.8 µV to 3.1 (58 %)</c>.</summary>
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
        string share = $"{Quantities.Short(Math.Abs(percent))} %";
        return effect is { Microvolts: { } uv, WithoutUv: { } without }
            ? $"{(adds ? "adds" : "takes")} {Quantities.Short(Math.Abs(uv))} \u00B5V {(adds ? "to" : "from")} {Quantities.Short(without)} ({share})"
            : $"{(adds ? "adds" : "takes")} {share}";
    }
}
