using System.Globalization;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>An agreement in words: <c>kappa 0.74 (95 % interval 0.66 to 0.82); they agree in 94 %, by chance in 76 %</c>.</summary>
public static class KappaWords
{
    /// <summary>The words; they say why where there is no kappa or no interval.</summary>
    public static string Of(KappaResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Kappa is not { } kappa)
        {
            return $"kappa is not defined: {result.Undefined}";
        }

        string interval = result is { Low: { } low, High: { } high }
            ? string.Create(CultureInfo.InvariantCulture, $"95 % interval {low:F2} to {high:F2}")
            : "no interval: the large-sample formula gives none at this agreement";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"kappa {kappa:F2} ({interval}); agreement {100 * result.Observed:F1} %, by chance {100 * result.Expected:F1} %");
    }
}
