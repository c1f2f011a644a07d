using System.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>Where the lines of a text file that are surely complete end: a line without an end of its own may be half written.</summary>
internal static class WholeLines
{
    private const int Window = 1 << 16;
    private const byte LineFeed = 0x0A;

    /// <summary>The offset behind the last line feed; 0 when there is none.</summary>
    /// <param name="stream">The file; its position is put back to the start.</param>
    /// <param name="bytesPerCharacter">1, or 2 in UTF-16.</param>
    public static long EndOf(Stream stream, int bytesPerCharacter)
    {
        byte[] window = new byte[Window];
        long end = stream.Length;
        while (end > 0)
        {
            int length = (int)Math.Min(Window, end);
            stream.Position = end - length;
            stream.ReadExactly(window, 0, length);
            int place = window.AsSpan(0, length).LastIndexOf(LineFeed);
            if (place >= 0)
            {
                // A character of two bytes that holds a line feed begins at an even offset.
                long at = end - length + place;
                stream.Position = 0;
                return Math.Min(stream.Length, at - (at % bytesPerCharacter) + bytesPerCharacter);
            }

            end -= length;
        }

        stream.Position = 0;
        return 0;
    }

    /// <summary>The text behind an offset.</summary>
    /// <param name="stream">The file; its position is put back to the start.</param>
    /// <param name="from">The offset; no more than 64 KiB from it on are read.</param>
    /// <param name="encoding">How the file is encoded.</param>
    public static string Rest(Stream stream, long from, Encoding encoding)
    {
        byte[] rest = new byte[(int)Math.Min(Window, stream.Length - from)];
        stream.Position = from;
        stream.ReadExactly(rest);
        stream.Position = 0;
        return encoding.GetString(rest);
    }
}
