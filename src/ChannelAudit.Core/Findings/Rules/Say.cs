using System.Globalization;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Numbers as people read them in sentences: few digits, the decimal point of tables.</summary>
internal static class Say
{
    /// <summary>A number with two significant digits, at most one of them behind the point from 1 on.</summary>
    public static string Number(double value) => Math.Abs(value) switch
    {
        >= 9.95 => value.ToString("0", CultureInfo.InvariantCulture),
        >= 0.995 => value.ToString("0.0", CultureInfo.InvariantCulture),
        _ => value.ToString("0.00#", CultureInfo.InvariantCulture),
    };

    /// <summary>A time given in ms: <c>80 ms</c>, from one second on <c>21 s</c>.</summary>
    public static string Milliseconds(double value) => value < 1000 ? Number(value) + " ms" : Number(value / 1000) + " s";

    /// <summary>What a milder grade would mean, for sentences about what a filter would do.</summary>
    public static string Then(Grade grade) => grade == Grade.Pass ? "this finding would go" : "this would only be questionable";

    /// <summary>A frequency.</summary>
    public static string Hertz(double value) => value.ToString("0.#", CultureInfo.InvariantCulture) + " Hz";
}
