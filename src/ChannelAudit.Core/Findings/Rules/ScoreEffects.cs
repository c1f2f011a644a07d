using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Findings.Rules;

/// <summary>What a finding does to the score of its window.</summary>
internal static class ScoreEffects
{
    /// <summary>The effect of a finding; null for information.</summary>
    /// <param name="window">The window.</param>
    /// <param name="outcome">What a rule found in it.</param>
    public static ScoreEffect? Of(WindowCase window, RuleOutcome outcome) => outcome.Reason switch
    {
        ReasonCode.LineNoise => OfShift(window, outcome, "line_effect"),
        ReasonCode.NarrowBand => OfShift(window, outcome, "narrow_effect"),
        ReasonCode.LowFrequency => OfShift(window, outcome, "lowfreq_effect"),
        ReasonCode.NoiseFloor => OfShift(window, outcome, "noise_effect"),
        ReasonCode.Pops => OfShift(window, outcome, "pops_effect"),
        ReasonCode.Clipping => OfShift(window, outcome, "clipped_effect", "at least: as of a Gaussian"),
        ReasonCode.Flatline => OfShift(window, outcome, "flat_effect"),
        ReasonCode.Dropout => OfDropout(window),
        ReasonCode.Drift => OfDrift(window),
        ReasonCode.WeakResponse => new ScoreEffect(null, null, null, "no answer was seen, so nobody knows what the muscle would add"),
        ReasonCode.UnusableInput => new ScoreEffect(null, null, null, "amplitudes that are not what they are taken for"),
        _ => null,
    };

    /// <summary>What a bridge lets into a channel: a share of the other site's amplitude, which is another in every trial.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="finding">The bridge, which names both channels, the first first.</param>
    /// <param name="evidence">The medians that decided.</param>
    public static ScoreEffect OfBridge(string channel, Finding finding, BridgeEvidence evidence)
    {
        bool isFirst = string.Equals(finding.Channels[0], channel, StringComparison.Ordinal);
        string other = finding.Channels[isFirst ? 1 : 0];
        string share = (isFirst ? evidence.GainBa : evidence.GainAb) is { } gain
            ? $"{Say.Number(100 * Math.Abs(gain))} % of its amplitude gets in"
            : "too few of its contractions to say how much of it gets in";
        return new ScoreEffect(null, null, null, $"depends on {other}: {share}");
    }

    private static ScoreEffect OfShift(WindowCase window, RuleOutcome outcome, string measure, string? note = null)
    {
        double? percent = outcome.InheritedPower is { } power
            ? window.Reading.Left is { } left ? ScoreShift.OfAddedPower(power, left.Total) : null
            : window.ValueOf(measure);
        if (percent is not { } shift)
        {
            return new ScoreEffect(null, null, null, window.NoteOf(measure) ?? "no spectrum");
        }

        return window.ValueOf("rectified") is { } rectified && ScoreShift.Without(rectified, shift) is { } without
            ? new ScoreEffect(rectified - without, shift, without, note)
            : new ScoreEffect(null, shift, null, note);
    }

    // What is there is as large as ever; there is less of it.
    private static ScoreEffect OfDropout(WindowCase window)
    {
        double present = 100 - (window.ValueOf("missing") ?? 0);
        return present > 0
            ? new ScoreEffect(0, 0, window.ValueOf("rectified"), $"the score rests on {Say.Number(present)} % of the window")
            : new ScoreEffect(null, null, null, "no samples in this window");
    }

    private static ScoreEffect OfDrift(WindowCase window) => window.Channel.Frame.Filter.TakesDrift
        ? new ScoreEffect(0, 0, window.ValueOf("rectified"), "a high-pass takes drift away; what the rail cuts off is clipping")
        : new ScoreEffect(null, null, null, "no high-pass of order 2 or more at 2 Hz or more under [scoring]");
}
