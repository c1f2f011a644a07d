using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>The samples of a delimited text, read from its spool.</summary>
/// <remarks>Reads go straight to the caller's buffer; the system's own file cache serves those that repeat.</remarks>
internal sealed class SpooledSamples : ISampleSource
{
    private readonly SampleSpool _spool;
    private readonly ImmutableArray<int> _columns;
    private readonly ImmutableArray<ImmutableArray<RowRun>> _runs;

    /// <summary>Serves a spool, which it then owns.</summary>
    /// <param name="spool">The numbers.</param>
    /// <param name="columns">Column of the spool for each channel; -1 for text.</param>
    /// <param name="runs">Where each channel's stored samples are.</param>
    public SpooledSamples(SampleSpool spool, ImmutableArray<int> columns, ImmutableArray<ImmutableArray<RowRun>> runs)
    {
        _spool = spool;
        _columns = columns;
        _runs = runs;
    }

    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(channel);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(channel, _columns.Length);
        ImmutableArray<RowRun> runs = _runs[channel];
        long stored = runs.IsEmpty ? 0 : runs[^1].StoredEnd;
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, stored - destination.Length);
        int at = RunWith(runs, start);
        while (!destination.IsEmpty)
        {
            RowRun run = runs[at++];
            long offset = start - run.StoredStart;
            int length = (int)Math.Min(destination.Length, run.Length - offset);
            _spool.Read(_columns[channel], run.Row + offset, destination[..length]);
            destination = destination[length..];
            start += length;
        }
    }

    /// <inheritdoc/>
    /// <remarks>The spool is read at places, and nothing is held between reads.</remarks>
    public ISampleSource Another() => this;

    /// <inheritdoc/>
    public void Dispose() => _spool.Dispose();

    // The last run that starts at or before the index.
    private static int RunWith(ImmutableArray<RowRun> runs, long stored)
    {
        int low = 0;
        int high = runs.Length - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (runs[middle].StoredStart <= stored)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return low;
    }
}
