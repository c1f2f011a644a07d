using System.Collections.Immutable;
using System.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>The first lines of a text file, from which its layout is told.</summary>
/// <param name="Encoding">How the file is encoded.</param>
/// <param name="Lines">Whole lines, blank ones included.</param>
internal sealed record TextSample(Encoding Encoding, ImmutableArray<string> Lines)
{
    private const int MaximumLines = 500;
    private const int MaximumCharacters = 1 << 20;
    private const int HeadBytes = 1 << 16;

    /// <summary>Reads the first lines.</summary>
    /// <exception cref="ChannelAuditException">When the file is empty or no text.</exception>
    public static TextSample Read(Stream stream, string file)
    {
        byte[] head = new byte[HeadBytes];
        int length = stream.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        if (length == 0)
        {
            throw TextErrors.Empty(file);
        }

        Encoding encoding = TextEncodings.Detect(head.AsSpan(0, length)) ?? throw TextErrors.Binary(file);
        stream.Position = 0;
        using StreamReader reader = new(stream, encoding, detectEncodingFromByteOrderMarks: true, leaveOpen: true);
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        int characters = 0;
        while (lines.Count < MaximumLines && characters < MaximumCharacters && reader.ReadLine() is { } line)
        {
            // A single line as long as the sample is no table; what is kept stays small all the same.
            lines.Add(line.Length > MaximumCharacters ? line[..MaximumCharacters] : line);
            characters += line.Length;
        }

        if (lines.All(string.IsNullOrWhiteSpace))
        {
            throw TextErrors.Empty(file);
        }

        return new TextSample(encoding, lines.ToImmutable());
    }
}
