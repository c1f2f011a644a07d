using System.Runtime.InteropServices;

namespace ChannelAudit.Recordings.Text;

/// <summary>A temporary file of doubles, column by column within blocks of rows, that vanishes when it is closed.</summary>
/// <remarks>Parsing a text again for every question would be slow, keeping its numbers in memory would not be flat with its length.</remarks>
internal sealed class SampleSpool : IDisposable
{
    // A block is long enough to be read at once, and no larger for many columns than for few.
    private const int MostRows = 4096;
    private const int MostNumbers = 1 << 17;
    private const int MostAttempts = 1000;

    private readonly FileStream _file;
    private readonly double[] _block;
    private readonly int _columns;
    private readonly int _blockRows;
    private int _rowInBlock;

    private readonly string _recording;

    private SampleSpool(string recording, FileStream file, int columns)
    {
        _recording = recording;
        _file = file;
        _columns = columns;
        _blockRows = Math.Clamp(MostNumbers / Math.Max(1, columns), 1, MostRows);
        _block = new double[columns * _blockRows];
    }

    /// <summary>Rows stored so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Opens a new spool.</summary>
    /// <param name="recording">The recording's name, for messages.</param>
    /// <param name="folder">Where; the system's folder for temporary files when null.</param>
    /// <param name="columns">Numbers in a row.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be made.</exception>
    public static SampleSpool Create(string recording, string? folder, int columns)
    {
        FileStreamOptions options = new()
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            Share = FileShare.None,
            BufferSize = 0,
            Options = FileOptions.DeleteOnClose | FileOptions.RandomAccess,
        };
        if (!OperatingSystem.IsWindows())
        {
            // Recordings of people: nobody else on the machine reads them.
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        folder ??= Path.GetTempPath();
        for (int number = 0; ; number++)
        {
            string name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"channelaudit-{Environment.ProcessId}-{number}.samples");
            string path = Path.Combine(folder, name);
            try
            {
                return new SampleSpool(recording, new FileStream(path, options), columns);
            }
            catch (IOException) when (number < MostAttempts && Directory.Exists(folder))
            {
                // Taken by another recording of this run, which may be gone by now: try the next number.
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw TextErrors.NoTemporaryFile(recording, fault);
            }
        }
    }

    /// <summary>Stores one row.</summary>
    public void Append(ReadOnlySpan<double> row)
    {
        for (int column = 0; column < _columns; column++)
        {
            _block[(column * _blockRows) + _rowInBlock] = row[column];
        }

        Rows++;
        if (++_rowInBlock == _blockRows)
        {
            WriteBlock();
        }
    }

    /// <summary>Writes what is left; after it only <see cref="Read"/> is allowed.</summary>
    public void Complete()
    {
        if (_rowInBlock > 0)
        {
            WriteBlock();
        }
    }

    /// <summary>Reads consecutive rows of one column.</summary>
    public void Read(int column, long row, Span<double> destination)
    {
        while (!destination.IsEmpty)
        {
            (long block, long inBlock) = Math.DivRem(row, _blockRows);
            int length = (int)Math.Min(destination.Length, _blockRows - inBlock);
            long position = ((((block * _columns) + column) * _blockRows) + inBlock) * sizeof(double);
            ReadFully(MemoryMarshal.AsBytes(destination[..length]), position);
            destination = destination[length..];
            row += length;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    private void ReadFully(Span<byte> bytes, long position)
    {
        while (!bytes.IsEmpty)
        {
            int read = RandomAccess.Read(_file.SafeFileHandle, bytes, position);
            if (read == 0)
            {
                throw new EndOfStreamException("The spooled samples end early.");
            }

            bytes = bytes[read..];
            position += read;
        }
    }

    private void WriteBlock()
    {
        try
        {
            RandomAccess.Write(_file.SafeFileHandle, MemoryMarshal.AsBytes(_block.AsSpan()), ((Rows - 1) / _blockRows) * _block.Length * sizeof(double));
        }
        catch (IOException fault)
        {
            throw TextErrors.NoTemporaryFile(_recording, fault);
        }

        _rowInBlock = 0;
    }
}
