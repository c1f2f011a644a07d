using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Makes the channels of a recording from its header: unit, rails, and whether a channel is audited.</summary>
internal static class EdfChannels
{
    // The contract asks for a positive rate; a signal without samples of its own has none.
    private static readonly Rational NoRate = new(1, 1);

    /// <summary>Makes every channel and its scale.</summary>
    /// <param name="header">The header.</param>
    /// <param name="runs">The runs of records.</param>
    /// <param name="options">The unit of signals that state none.</param>
    /// <exception cref="ChannelAuditException">When the options name an unknown unit.</exception>
    public static (ImmutableArray<Channel> Channels, ImmutableArray<SampleScale> Scales) Make(
        EdfHeader header, ImmutableArray<RecordRun> runs, ReadOptions options)
    {
        ImmutableArray<string> labels = SignalLabel.MakeUnique(header.Signals.Select(signal => signal.Label));
        ImmutableArray<Channel>.Builder channels = ImmutableArray.CreateBuilder<Channel>(header.Signals.Length);
        ImmutableArray<SampleScale>.Builder scales = ImmutableArray.CreateBuilder<SampleScale>(header.Signals.Length);

        // Most signals share a rate, and so their stretches.
        Dictionary<int, ImmutableArray<Stretch>> stretches = [];
        foreach (EdfSignalHeader signal in header.Signals)
        {
            SignalUse use = SignalUse.Of(signal, options.Unit);
            bool hasSamples = !signal.IsAnnotations && signal.SamplesPerRecord > 0;
            Rational rate = hasSamples ? Rate(signal.SamplesPerRecord, header.RecordDurationS) : NoRate;
            if (hasSamples && !stretches.ContainsKey(signal.SamplesPerRecord))
            {
                stretches[signal.SamplesPerRecord] = StretchBuilder.Build(runs, signal.SamplesPerRecord, rate);
            }

            channels.Add(new Channel
            {
                Index = channels.Count,
                Label = labels[channels.Count],
                RawLabel = signal.Label,
                NotAudited = use.NotAudited ?? (RecordingBounds.Hold(rate) ? null : FormattableString.Invariant($"sampled at {rate.Value:G4} Hz: no rate of a muscle's recording")),
                FileUnit = signal.Unit,
                IsMicrovolts = use.IsMicrovolts,
                Rate = rate,
                Step = Math.Abs(use.Scale.Gain),
                LowerRail = use.Rails?.Lower,
                UpperRail = use.Rails?.Upper,
                Prefilter = PrefilterField.Parse(signal.Prefilter),
                Stretches = hasSamples ? stretches[signal.SamplesPerRecord] : [],
            });
            scales.Add(use.Scale);
        }

        return (channels.MoveToImmutable(), scales.MoveToImmutable());
    }

    private static Rational Rate(int samplesPerRecord, decimal durationS)
    {
        Rational duration = Rational.FromDecimal(durationS);
        return new Rational(samplesPerRecord * duration.Denominator, duration.Numerator);
    }
}
