using ChannelAudit.Reports.Tables;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Output;

/// <summary>A table over all recordings that is written while they come in, so that memory does not grow with them.</summary>
/// <typeparam name="TTable">How it is written.</typeparam>
internal sealed class GrowingTable<TTable> : IDisposable
    where TTable : class, ITableWriter
{
    private readonly string _name;
    private readonly string _place;
    private readonly Func<Stream, TTable> _start;
    private FileStream? _stream;
    private TTable? _table;

    /// <summary>Prepares a table; it starts with its first row, or at its end.</summary>
    /// <param name="name">Its name in the audit's folder.</param>
    /// <param name="place">Where it is written until the run ends.</param>
    /// <param name="start">Starts it.</param>
    public GrowingTable(string name, string place, Func<Stream, TTable> start) => (_name, _place, _start) = (name, place, start);

    /// <summary>Adds rows.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Add(Action<TTable> rows) => Guarded(() => rows(Started()));

    /// <summary>Ends the table and hands it to a batch.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void HandTo(OutputBatch batch)
    {
        Guarded(() =>
        {
            Started().End();
            _stream!.Flush(flushToDisk: true);
            Close();
            batch.Take(new OutputFile(_name, FileHash.Of(_place)), _place);
        });
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_stream is not null)
        {
            Close();
            Quietly.Do(() => File.Delete(_place));
        }
    }

    private TTable Started()
    {
        _stream ??= new FileStream(_place, FileMode.Create, FileAccess.Write, FileShare.Read, bufferSize: 0);
        return _table ??= _start(_stream);
    }

    private void Close()
    {
        _table?.Dispose();
        _stream?.Dispose();
        (_table, _stream) = (null, null);
    }

    private void Guarded(Action action)
    {
        try
        {
            action();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotWrite(_name, exception);
        }
    }
}
