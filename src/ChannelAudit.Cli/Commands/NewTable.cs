namespace ChannelAudit.Cli.Commands;

/// <summary>A table on disk that must not be there yet: written piece by piece, and under its name only when it is whole.</summary>
internal sealed class NewTable : IDisposable
{
    private const string PartialEnding = ".channelaudit-partial";

    private readonly string _path;
    private readonly FileStream _stream;

    /// <summary>Starts the table.</summary>
    /// <param name="path">Its place.</param>
    /// <param name="header">Its header line.</param>
    /// <exception cref="ChannelAuditException">When the file is there already, or the operating system refuses.</exception>
    public NewTable(string path, byte[] header)
    {
        NewFile.Check(path, FileOption.Out);
        _path = path;
        try
        {
            _stream = new FileStream(path + PartialEnding, FileMode.Create, FileAccess.Write);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(path, FileOption.Out, fault);
        }

        Add(header);
    }

    /// <summary>Adds rows.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Add(byte[] rows)
    {
        try
        {
            _stream.Write(rows);
        }
        catch (IOException fault)
        {
            throw UsageErrors.CannotWrite(_path, FileOption.Out, fault);
        }
    }

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
            throw UsageErrors.CannotWrite(_path, FileOption.Out, fault);
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
}
