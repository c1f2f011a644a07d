using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Segments;
using ChannelAudit.Toml;

namespace ChannelAudit.Synthesis;

/// <summary>A <c>setup.toml</c> that fits a made recording.</summary>
public static class SetupText
{
    /// <summary>The text of the file, lines ended by LF.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="trialsFrom">Where the trials are: <c>annotations</c> or <c>events</c>.</param>
    public static string Of(SessionPlan plan, string trialsFrom = "annotations")
    {
        ArgumentNullException.ThrowIfNull(plan);
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"[recording]\namplifier_noise_uv = {plan.Amplifier.NoiseUv:0.0###}\n");
        foreach (SitePlan site in plan.Sites)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[[sites]]\nname = {TomlText.Quoted(site.Name)}\n");
            Line(text, "muscle", site.Muscle);
            Line(text, "channel", site.Label);
            if (!site.Adjacent.IsEmpty)
            {
                text.Append(CultureInfo.InvariantCulture, $"adjacent = {TomlText.List(site.Adjacent)}\n");
            }

            Line(text, "task", site.Task);
        }

        ImmutableArray<string> rest =
        [
            .. plan.Trials.Where(trial => trial.Role == TrialRole.Rest).Select(trial => trial.Label).Distinct(StringComparer.Ordinal),
        ];
        text.Append(CultureInfo.InvariantCulture, $"\n[trials]\nfrom = {TomlText.Quoted(trialsFrom)}\nrest = {TomlText.List(rest)}\n");
        return text.ToString();
    }

    private static void Line(StringBuilder text, string key, string? value)
    {
        if (value is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"{key} = {TomlText.Quoted(value)}\n");
        }
    }
}
