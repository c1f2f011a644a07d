using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>Describes what was made in the words of a reader.</summary>
internal static class MadeChannels
{
    /// <summary>The channel of a site.</summary>
    internal static Channel Describe(SignalPath path, int site)
    {
        SiteSignals signals = path.Sites[site];
        AmplifierPlan amplifier = path.Plan.Amplifier;
        return new Channel
        {
            Index = site,
            Label = signals.Site.Label,
            RawLabel = signals.Site.Label,
            FileUnit = "uV",
            Rate = path.Plan.Rate,
            Step = amplifier.StepUv,
            LowerRail = signals.LowestCode!.Value * amplifier.StepUv,
            UpperRail = signals.HighestCode!.Value * amplifier.StepUv,
            Prefilter = new Prefilter(amplifier.HighpassHz, amplifier.LowpassHz, [], PrefilterText(amplifier)),
            Stretches = Stretches(path.Plan.Length, [.. path.Gaps, .. signals.Missing]),
        };
    }

    /// <summary>The trials as annotations.</summary>
    internal static ImmutableArray<Annotation> Annotations(SessionPlan plan) =>
        [.. plan.Trials.Select(trial => new Annotation(trial.OnsetS, trial.DurationS, trial.Label))];

    /// <summary>The header's field of filters.</summary>
    internal static string PrefilterText(AmplifierPlan amplifier)
    {
        string highpass = amplifier.HighpassHz > 0
            ? string.Create(CultureInfo.InvariantCulture, $"HP:{amplifier.HighpassHz}Hz")
            : "HP:DC";
        return amplifier.LowpassHz is { } lowpassHz
            ? string.Create(CultureInfo.InvariantCulture, $"{highpass} LP:{lowpassHz}Hz")
            : highpass;
    }

    /// <summary>What is left of a time axis when some of it is taken out.</summary>
    internal static ImmutableArray<Stretch> Stretches(int length, IReadOnlyCollection<SampleSpan> lost)
    {
        ImmutableArray<Stretch>.Builder stretches = ImmutableArray.CreateBuilder<Stretch>();
        int from = 0;
        long stored = 0;
        foreach (SampleSpan span in lost.OrderBy(span => span.From).Append(new SampleSpan(length, length)))
        {
            if (span.From > from)
            {
                stretches.Add(new Stretch(from, span.From - from, stored));
                stored += span.From - from;
            }

            from = Math.Max(from, span.To);
        }

        return stretches.ToImmutable();
    }
}
