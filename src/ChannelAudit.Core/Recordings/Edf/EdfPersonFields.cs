using System.Text;
using System.Text.RegularExpressions;
using ChannelAudit.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Whether somebody has filled in what a header has room for about the participant and the session.</summary>
/// <remarks>
/// Bytes 8 to 88 (code, sex, birth date, name) and 88 to 168 (start date, codes of the investigation, of who made it, of the equipment): Kemp et al. 1992, Electroenceph Clin
/// Neurophysiol 82:391; Kemp &amp; Olivan 2003, Clin Neurophysiol 114:1755, where an <c>X</c> stands for what is not told. Nothing of what stands there is kept or passed on.
/// </remarks>
public static partial class EdfPersonFields
{
    private const int HeaderBytes = 168;
    private const int FirstByte = 8;
    private const int FieldBytes = 80;

    /// <summary>Looks into the first bytes of a file; false for one that has no such header or cannot be read.</summary>
    /// <param name="path">The recording.</param>
    public static bool AreFilledIn(string path)
    {
        try
        {
            if (PlainFile.IsEmpty(path))
            {
                return false;
            }

            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            byte[] header = new byte[HeaderBytes];
            bool isWhole = stream.ReadAtLeast(header, HeaderBytes, throwOnEndOfStream: false) == HeaderBytes;
            return isWhole && HasHeader(header) && (Says(header, FirstByte) || Says(header, FirstByte + FieldBytes));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Who reads the recording itself says what is wrong with it.
            return false;
        }
    }

    private static bool HasHeader(byte[] header) => header[0] == 0xFF || header.AsSpan(0, FirstByte).SequenceEqual("0       "u8);

    // The words of the standard for "not told", the sex and the date of the session tell nothing by themselves.
    private static bool Says(byte[] header, int from) =>
        TellsNothing().Replace(Encoding.Latin1.GetString(header, from, FieldBytes), string.Empty).Trim(' ', '\0').Length > 0;

    [GeneratedRegex(@"^Startdate( +(X|\d\d-[A-Z]{3}-\d{4}))?|(?<= |^)[XMF](?= |$)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex TellsNothing();
}
