using System.Collections.Immutable;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Reports.Comparing;

namespace ChannelAudit.Cli.Comparing;

/// <summary>The table of changes on disk: written piece by piece, and under its name only when it is whole.</summary>
internal sealed class ChangesFile : IDisposable
{
    private const string PartialEnding = ".channelaudit-partial";

    private readonly string _path;
    private readonly FileStream _stream;

    /// <summary>Starts the table.</summary>
    /// <exception cref="ChannelAuditException">When the file is there already, or the operating system refuses.</exception>
    public ChangesFile(string path)
    {
        NewFile.Check(path);
        _path = path;
        try
        {
            _stream = new FileStream(path + PartialEnding, FileMode.Create, FileAccess.Write);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(path, fault);
        }

        Write(ChangesTsv.Header());
    }

    /// <summary>Adds rows.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Add(ImmutableArray<VerdictChange> changes) => Write(ChangesTsv.Rows(changes));

    /// <summary>Gives the file its name.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Complete()
    {
        try
        {
            _stream.Flush(flushToDisk: true);
            _stream.Dispose();
            File.Move(_path + PartialEnding, _path, overwrite: false);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(_path, fault);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _stream.Dispose();
        try
        {
            File.Delete(_path + PartialEnding);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The message about the file itself says more.
        }
    }

    private void Write(byte[] bytes)
    {
        try
        {
            _stream.Write(bytes);
        }
        catch (IOException fault)
        {
            throw UsageErrors.CannotWrite(_path, fault);
        }
    }
}
