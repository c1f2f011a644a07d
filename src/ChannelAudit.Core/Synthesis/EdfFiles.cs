using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;

namespace ChannelAudit.Synthesis;

/// <summary>Writes a made recording as EDF+ (16 bits and fewer) or its 24-bit variant, discontinuous when it has gaps, with the trials as annotations.</summary>
public static class EdfFiles
{
    /// <summary>Record durations that are tried in turn, in seconds.</summary>
    private static readonly ImmutableArray<decimal> Durations = [1, 0.5M, 0.2M, 0.1M, 0.05M, 0.02M, 0.01M, 0.005M, 5];

    /// <summary>Writes the file.</summary>
    /// <param name="made">The recording.</param>
    /// <param name="path">Where to; replaced when it exists.</param>
    /// <exception cref="ArgumentException">
    /// When a channel misses samples of its own, when no record duration divides the stretches, or when a rail does not fit the
    /// 8 characters of the header.
    /// </exception>
    public static void Write(MadeRecording made, string path)
    {
        ArgumentNullException.ThrowIfNull(made);
        using Recording recording = made.Open();
        EdfWriter.Write(path, Content(made, recording));
    }

    /// <summary>The annotations of a plan in the order in which EDF+ wants them.</summary>
    internal static ImmutableArray<Annotation> Annotations(SessionPlan plan) =>
        [.. MadeChannels.Annotations(plan).OrderBy(annotation => annotation.OnsetS)];

    /// <summary>A signal of a file for a channel.</summary>
    internal static EdfSignalContent Signal(Channel channel, decimal recordS, EdfFill fill)
    {
        double lower = channel.LowerRail!.Value;
        double upper = channel.UpperRail!.Value;
        if (!FitsHeader(lower) || !FitsHeader(upper))
        {
            throw new ArgumentException($"A rail of '{channel.Label}' does not fit the 8 characters of the header.", nameof(channel));
        }

        return new EdfSignalContent(channel.RawLabel, lower, upper, (int)channel.Rate.IndexAt(recordS), fill)
        {
            DigitalMin = (int)Math.Round(lower / channel.Step),
            DigitalMax = (int)Math.Round(upper / channel.Step),
            Prefilter = channel.Prefilter.Text,
            Transducer = "electrode pair",
        };
    }

    private static EdfContent Content(MadeRecording made, Recording recording)
    {
        ImmutableArray<Stretch> stretches = recording.Channels[0].Stretches;
        if (recording.Channels.Any(channel => !channel.Stretches.SequenceEqual(stretches)))
        {
            throw new ArgumentException("Only text can miss samples of a single channel.", nameof(made));
        }

        Rational rate = made.Plan.Rate;
        decimal recordS = RecordDuration(rate, stretches);
        long perRecord = rate.IndexAt(recordS);
        return new EdfContent(
            [
                .. recording.Channels.Select(channel => Signal(
                    channel, recordS, (first, destination) => recording.Samples.Read(channel.Index, first, destination))),
            ],
            (int)(stretches[^1].StoredStart + stretches[^1].Length) / (int)perRecord)
        {
            Is24Bit = made.Plan.Amplifier.Bits > 16,
            RecordDurationS = recordS,
            RecordStartsS = made.HasGaps ? Starts(rate, stretches, perRecord) : [],
            Annotations = Annotations(made.Plan),
        };
    }

    private static ImmutableArray<decimal> Starts(Rational rate, ImmutableArray<Stretch> stretches, long perRecord)
    {
        ImmutableArray<decimal>.Builder starts = ImmutableArray.CreateBuilder<decimal>();
        foreach (Stretch stretch in stretches)
        {
            for (long at = stretch.Start; at < stretch.End; at += perRecord)
            {
                starts.Add((decimal)at * rate.Denominator / rate.Numerator);
            }
        }

        return starts.ToImmutable();
    }

    private static decimal RecordDuration(Rational rate, ImmutableArray<Stretch> stretches)
    {
        foreach (decimal duration in Durations)
        {
            decimal samples = duration * rate.Numerator / rate.Denominator;
            if (samples >= 1 && decimal.Truncate(samples) == samples && stretches.All(stretch => stretch.Length % samples == 0))
            {
                return duration;
            }
        }

        throw new ArgumentException("No record duration divides all stretches: round the recording and its gaps to tenths of a second.", nameof(stretches));
    }

    private static bool FitsHeader(double rail) => ((decimal)rail).ToString(CultureInfo.InvariantCulture).Length <= 8;
}
