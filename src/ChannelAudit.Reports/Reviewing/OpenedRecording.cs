using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A recording that is being looked at: its whole result, and its signal once that is asked for.</summary>
/// <param name="result">Everything known about it, without decisions.</param>
/// <param name="path">Its file; null when the folder of the recordings was not given.</param>
internal sealed class OpenedRecording(RecordingResult result, string? path) : IDisposable
{
    private readonly Lock _gate = new();
    private SignalFile? _file;
    private bool _isClosed;

    /// <summary>Everything known about it.</summary>
    public RecordingResult Result { get; } = result;

    /// <summary>Reads of its signal, one reader at a time.</summary>
    /// <typeparam name="T">What is read.</typeparam>
    /// <param name="read">Reads.</param>
    /// <returns>What was read; nothing when the file has just been closed: it is to be opened again.</returns>
    /// <exception cref="ChannelAuditException">When there is no file, or it cannot be read.</exception>
    public (bool IsRead, T? Value) Use<T>(Func<SignalFile, T> read)
    {
        lock (_gate)
        {
            if (_isClosed)
            {
                return (false, default);
            }

            // What the setup said of a file that does not say it itself is known from the result.
            _file ??= SignalFile.Open(path ?? throw ReviewErrors.NotThere(), new ReadOptions(
                Result.Channels.Select(channel => (decimal?)channel.RateHz).FirstOrDefault(),
                Result.Channels.Any(channel => channel.Signal is { Unit: "none" }) ? "none" : null));
            return (true, read(_file));
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            _isClosed = true;
            _file?.Dispose();
            _file = null;
        }
    }
}
