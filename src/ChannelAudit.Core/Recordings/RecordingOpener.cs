using ChannelAudit.Recordings.Edf;
using ChannelAudit.Recordings.Text;
using Microsoft.Win32.SafeHandles;

namespace ChannelAudit.Recordings;

/// <summary>Opens a recording of any format we read; the format is told by what the file contains, not by its name.</summary>
public static class RecordingOpener
{
    // The fixed part of an EDF header; enough to tell text from binary too.
    private const int FirstBytes = 256;

    /// <summary>Opens a recording. The caller disposes it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What the setup says about files that do not say it themselves.</param>
    /// <exception cref="ChannelAuditException">When the file is missing, empty, unreadable or no recording.</exception>
    public static Recording Open(string path, ReadOptions options)
    {
        byte[] first = ReadFirstBytes(path);
        string name = Path.GetFileName(path);
        if (first.Length == 0)
        {
            throw RecordingErrors.Empty(name);
        }

        return EdfReader.Recognises(first) ? EdfReader.Open(path, options) : DelimitedText.Open(path, options);
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
}
