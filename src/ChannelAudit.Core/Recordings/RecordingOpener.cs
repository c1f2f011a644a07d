using ChannelAudit.Recordings.Edf;
using ChannelAudit.Recordings.Text;
using Microsoft.Win32.SafeHandles;

namespace ChannelAudit.Recordings;

/// <summary>Opens a recording of any format we read; the format is told by what the file contains, not by its name.</summary>
public static class RecordingOpener
{
    // The fixed part of an EDF header; enough to tell text from binary too.
    private const int FirstBytes = 256;

    // The version field of an EDF header is that long; text of any encoding has another byte among as many.
    private const int ZerosOfNoText = 8;
    private const int BlockBytes = 1 << 16;

    /// <summary>Opens a recording. The caller disposes it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What the setup says about files that do not say it themselves.</param>
    /// <exception cref="ChannelAuditException">When the file is missing, empty, unreadable or no recording, or lasts for days and holds next to nothing.</exception>
    public static Recording Open(string path, ReadOptions options)
    {
        byte[] first = ReadFirstBytes(path);
        string name = Path.GetFileName(path);
        if (first.Length == 0)
        {
            throw RecordingErrors.Empty(name);
        }

        if (first.Length >= ZerosOfNoText && first.AsSpan(0, ZerosOfNoText).IndexOfAnyExcept((byte)0) < 0)
        {
            throw RecordingErrors.BeginsWithZeros(name, LeadingZeros(path));
        }

        Recording recording = EdfReader.Recognises(first) ? EdfReader.Open(path, options) : DelimitedText.Open(path, options);
        try
        {
            RecordingBounds.CheckSpan(recording);
            return recording;
        }
        catch (ChannelAuditException)
        {
            recording.Dispose();
            throw;
        }
    }

    private static byte[] ReadFirstBytes(string path)
    {
        using SafeFileHandle handle = RecordingFiles.OpenHandle(path);
        byte[] first = new byte[FirstBytes];
        try
        {
            int count = 0;
            int read;
            while (count < first.Length && (read = RandomAccess.Read(handle, first.AsSpan(count), count)) > 0)
            {
                count += read;
            }

            return first[..count];
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw RecordingErrors.CannotOpen(Path.GetFileName(path), exception);
        }
    }

    private static long LeadingZeros(string path)
    {
        using SafeFileHandle handle = RecordingFiles.OpenHandle(path);
        byte[] block = new byte[BlockBytes];
        try
        {
            long count = 0;
            int read;
            while ((read = RandomAccess.Read(handle, block, count)) > 0)
            {
                int other = block.AsSpan(0, read).IndexOfAnyExcept((byte)0);
                if (other >= 0)
                {
                    return count + other;
                }

                count += read;
            }

            return count;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw RecordingErrors.CannotOpen(Path.GetFileName(path), exception);
        }
    }
}
