using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>The amplifier's noise, offset and filters, and the converter behind it.</summary>
internal static class AmplifierStage
{
    /// <summary>Turns a channel's voltage into the amplifier's output.</summary>
    internal static void Amplify(SignalPath path, int site)
    {
        AmplifierPlan amplifier = path.Plan.Amplifier;
        SiteSignals signals = path.Sites[site];
        ElectrodeStage.AddNoise(path, "amplifier:" + signals.Site.Name, amplifier.NoiseUv, signals.Input);
        Pcg32 random = NoiseStream.Of(path.Plan.Seed, "offset:" + signals.Site.Name);
        signals.OffsetUv = amplifier.OffsetUv * ((2 * random.NextDouble()) - 1);
        signals.SettlingUvPerMin = amplifier.SettlingUvPerMin * ((2 * random.NextDouble()) - 1);
        double perSample = signals.SettlingUvPerMin / 60 / path.Plan.Rate.Value;
        for (int i = 0; i < signals.Input.Length; i++)
        {
            signals.Input[i] += signals.OffsetUv + (perSample * i);
        }

        Filter(amplifier, path.Plan.Rate.Value, signals.Input);
    }

    /// <summary>Rounds to the converter's steps and stops at its rails.</summary>
    internal static void Convert(SignalPath path, int site)
    {
        AmplifierPlan amplifier = path.Plan.Amplifier;
        SiteSignals signals = path.Sites[site];
        int lowest = signals.LowestCode ??= amplifier.LowestCode;
        int highest = signals.HighestCode ??= amplifier.HighestCode;
        int[] codes = new int[signals.Input.Length];
        for (int i = 0; i < codes.Length; i++)
        {
            codes[i] = (int)Math.Clamp(Math.Round(signals.Input[i] / amplifier.StepUv), lowest, highest);
        }

        signals.Codes = codes;
    }

    private static void Filter(AmplifierPlan amplifier, double rateHz, double[] signal)
    {
        if (amplifier.HighpassHz > 0)
        {
            // An amplifier that has been on for long has settled on its offset.
            double settled = signal.Length > 0 ? signal[0] : 0;
            for (int i = 0; i < signal.Length; i++)
            {
                signal[i] -= settled;
            }

            Butterworth.HighPass(amplifier.HighpassHz, rateHz).FilterInPlace(signal);
        }

        if (amplifier.LowpassHz is { } lowpassHz)
        {
            Butterworth.LowPass(lowpassHz, rateHz).FilterInPlace(signal);
        }
    }
}
