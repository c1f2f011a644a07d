using Microsoft.Win32.SafeHandles;

namespace ChannelAudit.Recordings.Edf;

/// <summary>An open file that is read at any place; its faults become messages for people.</summary>
internal sealed class EdfFile : IDisposable
{
    private readonly SafeFileHandle handle;

    /// <summary>Opens a file that may still be written by its recorder.</summary>
    /// <exception cref="ChannelAuditException">When it cannot be opened.</exception>
    public EdfFile(string path)
    {
        Name = Path.GetFileName(path);
        handle = RecordingFiles.OpenHandle(path);
        try
        {
            Length = RandomAccess.GetLength(handle);
        }
        catch (NotSupportedException exception)
        {
            handle.Dispose();
            throw RecordingErrors.CannotOpen(Name, exception);
        }
    }

    /// <summary>The file's name without its folder.</summary>
    public string Name { get; }

    /// <summary>Bytes when it was opened.</summary>
    public long Length { get; }

    /// <summary>Fills the buffer from a place in the file.</summary>
    /// <exception cref="ChannelAuditException">When the file ends first or cannot be read.</exception>
    public void Read(long offset, Span<byte> buffer)
    {
        try
        {
            while (!buffer.IsEmpty)
            {
                int read = RandomAccess.Read(handle, buffer, offset);
                if (read == 0)
                {
                    throw EdfErrors.CutShort(Name, offset);
                }

                buffer = buffer[read..];
                offset += read;
            }
        }
        catch (IOException exception)
        {
            throw EdfErrors.ReadFailed(Name, offset, exception);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => handle.Dispose();
}
