using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Spectra;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Survey;

namespace ChannelAudit.Views;

/// <summary>A recording opened to be looked at: the trace of any stretch of a channel, where its samples are at fault, and the spectrum of a window.</summary>
/// <remarks>Nothing is measured or judged here. Not safe for use by several threads at once. Dispose it to close the file.</remarks>
public sealed class SignalFile : IDisposable
{
    private const int LeastSegment = 16;
    private const int LeastSeconds = 3;
    private const int LeastShorter = 5;
    private const double LongestSpectrumS = 120;

    // What a high-pass of 1 Hz and more forgets in that time is less than can be seen.
    private const double WarmUpS = 2;

    private const double ShorterS = 0.5;

    // Puts 50 and 60 Hz on a bin too.
    private const double ShortestS = 0.2;

    private readonly Recording _recording;
    private readonly Dictionary<int, ShownChannel> _shown = [];

    private SignalFile(Recording recording) => _recording = recording;

    /// <summary>Opens a file as an audit does, with what stands beside it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What the file does not say itself.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, or is no recording.</exception>
    public static SignalFile Open(string path, ReadOptions options)
    {
        RecordingCompanions companions = BidsCompanions.Find(path);
        Recording recording = RecordingOpener.Open(path, options);
        try
        {
            return new SignalFile(companions.ApplyTo(recording));
        }
        catch
        {
            recording.Dispose();
            throw;
        }
    }

    /// <summary>The channel of a label, or null when the file has none.</summary>
    /// <param name="label">The label, unique in the recording.</param>
    public Channel? ChannelOf(string label) => _recording.Channels.FirstOrDefault(channel => string.Equals(channel.Label, label, StringComparison.Ordinal));

    /// <summary>The trace of a stretch, which may reach beyond the recording.</summary>
    /// <param name="channel">One of its channels.</param>
    /// <param name="fromS">Start in seconds from the first stored sample.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="columns">Columns at most.</param>
    /// <param name="cancel">Checked for every block.</param>
    /// <param name="behind">A filter with a high-pass that the samples pass first, its notches left out; null: none.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public SignalExcerpt Excerpt(Channel channel, double fromS, double toS, int columns, CancellationToken cancel, ScoringFilter? behind = null)
    {
        double rateHz = channel.Rate.Value;
        Window window = Covering(channel, fromS, toS);
        TraceBuilder builder = new(window.Start, window.End, columns);
        ImmutableArray<SecondOrderSection> sections = behind?.Sections(rateHz) ?? [];
        if (sections.IsEmpty)
        {
            foreach (SampleBlock block in SampleBlocks.Of(_recording, channel, window.Pieces, cancel))
            {
                builder.Add(block.Samples.Span, block.Start);
            }
        }
        else
        {
            AddFiltered(builder, channel, window, sections, cancel);
        }

        Trace trace = builder.Finish(rateHz);
        double[] middles = [.. Enumerable.Range(0, trace.Columns).Select(column => (trace.Least[column] + trace.Greatest[column]) / 2).Where(double.IsFinite).Order()];
        return new SignalExcerpt(trace, middles.Length == 0 || !sections.IsEmpty ? 0 : middles[middles.Length / 2]);
    }

    /// <summary>The rails of a channel, and where exactly its samples are at one, flat or missing, told as an audit tells it.</summary>
    /// <param name="channel">One of its channels.</param>
    /// <param name="fromS">Start in seconds from the first stored sample.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="finestS">Faults that lie no farther apart are given as one.</param>
    /// <param name="cancel">Checked for every block.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public ShownFaults Faults(Channel channel, double fromS, double toS, double finestS, CancellationToken cancel) =>
        ShownOf(channel).Faults(Covering(channel, fromS, toS), (long)(finestS * channel.Rate.Value), cancel);

    /// <summary>The harmonics of the mains that count on a channel, in Hz: those of line noise and of the channel's sheet.</summary>
    /// <param name="channel">One of its channels.</param>
    /// <param name="mains">The mains frequency that the audit used.</param>
    /// <param name="cancel">Checked often.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public ImmutableArray<double> HarmonicsHz(Channel channel, MainsResult mains, CancellationToken cancel) => ShownOf(channel).HarmonicsHz(mains, cancel);

    /// <summary>
    /// The spectrum of a window: segments of 1 s with half overlap as the measures have them, where it holds three and more (from 2 s on); else shorter ones, of half
    /// a second or a fifth, since the spectrum of one or two is mostly chance.
    /// </summary>
    /// <param name="channel">One of its channels.</param>
    /// <param name="fromS">Start in seconds from the first stored sample.</param>
    /// <param name="toS">End in seconds; of a window of more than two minutes the first two are taken.</param>
    /// <param name="cancel">Checked for every piece.</param>
    /// <param name="behind">A filter that the spectrum is shown behind, its notches left out; null: none.</param>
    /// <returns>Null when no unbroken piece of 0.2 s is stored.</returns>
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public WindowSpectrum? Spectrum(Channel channel, double fromS, double toS, CancellationToken cancel, ScoringFilter? behind = null)
    {
        double rateHz = channel.Rate.Value;
        double endS = Math.Min(toS, fromS + LongestSpectrumS);
        ImmutableArray<Stretch> pieces = Window.Of(channel.Stretches, (long)Math.Round(fromS * rateHz), (long)Math.Round(endS * rateHz)).Pieces;
        int segment = SegmentLength(channel, pieces);
        return segment < LeastSegment || pieces.All(piece => piece.Length < segment) ? null : Mean(channel, pieces, segment, behind, cancel);
    }

    /// <inheritdoc/>
    public void Dispose() => _recording.Dispose();

    private static Window Covering(Channel channel, double fromS, double toS)
    {
        long start = (long)Math.Floor(fromS * channel.Rate.Value);
        return Window.Of(channel.Stretches, start, Math.Max(start + 2, (long)Math.Ceiling(toS * channel.Rate.Value)));
    }

    private static int SegmentLength(Channel channel, ImmutableArray<Stretch> pieces)
    {
        int second = SpectralFrame.SegmentLengthOf(channel.Rate);
        int shorter = (int)Math.Round(ShorterS * channel.Rate.Value);
        return Holds(second, LeastSeconds) ? second
            : shorter >= LeastSegment && Holds(shorter, LeastShorter) ? shorter
            : (int)Math.Round(ShortestS * channel.Rate.Value);

        bool Holds(int length, int least) => pieces.Sum(piece => Segments(piece, length)) >= least;
    }

    private static int Segments(Stretch piece, int segment) => Welch.SegmentCount(piece.Length, segment, segment - (segment / 2));

    private ShownChannel ShownOf(Channel channel)
    {
        if (!_shown.TryGetValue(channel.Index, out ShownChannel? shown))
        {
            shown = new ShownChannel(_recording, channel);
            _shown.Add(channel.Index, shown);
        }

        return shown;
    }

    // The filter starts settled on the first sample of an unbroken stretch, or long enough before what is shown.
    private void AddFiltered(TraceBuilder builder, Channel channel, Window window, ImmutableArray<SecondOrderSection> sections, CancellationToken cancel)
    {
        Window wider = Window.Of(channel.Stretches, window.Start - (long)(WarmUpS * channel.Rate.Value), window.End);
        foreach (Stretch piece in wider.Pieces)
        {
            cancel.ThrowIfCancellationRequested();
            double[] samples = new double[piece.Length];
            _recording.Samples.Read(channel.Index, piece.StoredStart, samples);
            double first = samples[0];
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] -= first;
            }

            foreach (SecondOrderSection section in sections)
            {
                section.FilterInPlace(samples);
            }

            builder.Add(samples, piece.Start);
        }
    }

    private WindowSpectrum Mean(Channel channel, ImmutableArray<Stretch> pieces, int segment, ScoringFilter? behind, CancellationToken cancel)
    {
        double[] sum = new double[(segment / 2) + 1];
        int count = 0;
        (double least, double greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (Stretch piece in pieces.Where(piece => piece.Length >= segment))
        {
            cancel.ThrowIfCancellationRequested();
            double[] samples = new double[piece.Length];
            _recording.Samples.Read(channel.Index, piece.StoredStart, samples);
            (double low, double high) = Extremes.Of(samples);
            (least, greatest) = (Math.Min(least, low), Math.Max(greatest, high));
            int segments = Segments(piece, segment);
            double[] density = Welch.Density(samples, channel.Rate.Value, segment);
            for (int bin = 0; bin < sum.Length; bin++)
            {
                sum[bin] += segments * density[bin];
            }

            count += segments;
        }

        double rateHz = channel.Rate.Value;
        double binHz = rateHz / segment;
        double[]? passes = behind?.PowerAtBins(sum.Length, binHz, rateHz, withNotches: false);
        return new WindowSpectrum([.. sum.Select((value, bin) => value / count * (passes?[bin] ?? 1))], binHz, count, segment / rateHz, greatest <= least);
    }
}
