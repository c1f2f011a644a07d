using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Spectra;
using ChannelAudit.Survey;

namespace ChannelAudit.Views;

/// <summary>A recording opened to be looked at: the trace of any stretch of a channel, and the spectrum of a window.</summary>
/// <remarks>Nothing is measured or judged here. Not safe for use by several threads at once. Dispose it to close the file.</remarks>
public sealed class SignalFile : IDisposable
{
    private const double LeastSpectrumS = 0.2;
    private const int LeastSegment = 16;
    private const double LongestSpectrumS = 120;

    private readonly Recording _recording;

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
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public SignalExcerpt Excerpt(Channel channel, double fromS, double toS, int columns, CancellationToken cancel)
    {
        double rateHz = channel.Rate.Value;
        long start = (long)Math.Floor(fromS * rateHz);
        long end = Math.Max(start + 2, (long)Math.Ceiling(toS * rateHz));
        TraceBuilder builder = new(start, end, columns);
        foreach (SampleBlock block in SampleBlocks.Of(_recording, channel, Window.Of(channel.Stretches, start, end).Pieces, cancel))
        {
            builder.Add(block.Samples.Span, block.Start);
        }

        Trace trace = builder.Finish(rateHz);
        double[] middles = [.. Enumerable.Range(0, trace.Columns).Select(column => (trace.Least[column] + trace.Greatest[column]) / 2).Where(double.IsFinite).Order()];
        return new SignalExcerpt(trace, middles.Length == 0 ? 0 : middles[middles.Length / 2]);
    }

    /// <summary>The spectrum of a window: segments of 1 s as the measures have them, or of its longest unbroken piece when that is shorter.</summary>
    /// <param name="channel">One of its channels.</param>
    /// <param name="fromS">Start in seconds from the first stored sample.</param>
    /// <param name="toS">End in seconds; of a window of more than two minutes the first two are taken.</param>
    /// <param name="cancel">Checked for every piece.</param>
    /// <returns>Null when no unbroken piece of 0.2 s is stored.</returns>
    /// <exception cref="ChannelAuditException">When the file cannot be read on.</exception>
    public WindowSpectrum? Spectrum(Channel channel, double fromS, double toS, CancellationToken cancel)
    {
        double rateHz = channel.Rate.Value;
        double endS = Math.Min(toS, fromS + LongestSpectrumS);
        ImmutableArray<Stretch> pieces = Window.Of(channel.Stretches, (long)Math.Round(fromS * rateHz), (long)Math.Round(endS * rateHz)).Pieces;
        int segment = SegmentLength(channel, pieces);
        return segment < LeastSegment || segment < LeastSpectrumS * rateHz ? null : Mean(channel, pieces, segment, cancel);
    }

    /// <inheritdoc/>
    public void Dispose() => _recording.Dispose();

    private static int SegmentLength(Channel channel, ImmutableArray<Stretch> pieces)
    {
        int second = SpectralFrame.SegmentLengthOf(channel.Rate);
        long longest = pieces.IsEmpty ? 0 : pieces.Max(piece => piece.Length);
        return longest >= second ? second : (int)(longest - (longest % 2));
    }

    private WindowSpectrum Mean(Channel channel, ImmutableArray<Stretch> pieces, int segment, CancellationToken cancel)
    {
        double[] sum = new double[(segment / 2) + 1];
        int count = 0;
        foreach (Stretch piece in pieces.Where(piece => piece.Length >= segment))
        {
            cancel.ThrowIfCancellationRequested();
            double[] samples = new double[piece.Length];
            _recording.Samples.Read(channel.Index, piece.StoredStart, samples);
            int segments = Welch.SegmentCount(piece.Length, segment, segment - (segment / 2));
            double[] density = Welch.Density(samples, channel.Rate.Value, segment);
            for (int bin = 0; bin < sum.Length; bin++)
            {
                sum[bin] += segments * density[bin];
            }

            count += segments;
        }

        return new WindowSpectrum([.. sum.Select(value => value / count)], channel.Rate.Value / segment, count);
    }
}
