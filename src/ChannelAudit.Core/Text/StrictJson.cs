using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace ChannelAudit.Text;

/// <summary>Parses JSON whose text is text all through.</summary>
/// <remarks>
/// <see cref="JsonDocument"/> passes over bytes that are no UTF-8 and over halves of surrogate pairs, and throws something else than <see cref="JsonException"/> when they are asked for.
/// Here both are refused like any other fault of the file.
/// </remarks>
public static class StrictJson
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Parses it; the caller disposes it.</summary>
    /// <param name="utf8">The whole file.</param>
    /// <param name="options">What is tolerated.</param>
    /// <exception cref="JsonException">When it is no JSON, no UTF-8, or holds half of a surrogate pair; with its line.</exception>
    public static JsonDocument Parse(ReadOnlyMemory<byte> utf8, JsonDocumentOptions options = default)
    {
        RequireText(utf8.Span);
        JsonDocument document = JsonDocument.Parse(utf8, options);
        try
        {
            RequireWholeCharacters(utf8.Span, options);
            return document;
        }
        catch
        {
            document.Dispose();
            throw;
        }
    }

    private static void RequireText(ReadOnlySpan<byte> utf8)
    {
        if (Utf8.IsValid(utf8))
        {
            return;
        }

        try
        {
            Strict.GetCharCount(utf8);
        }
        catch (DecoderFallbackException fault)
        {
            throw Fault("a byte that is no UTF-8", utf8, fault.Index, fault);
        }
    }

    // Only an escape can still write half of a pair, and hardly any file has one.
    private static void RequireWholeCharacters(ReadOnlySpan<byte> utf8, JsonDocumentOptions options)
    {
        if (utf8.IndexOf(@"\ud"u8) < 0 && utf8.IndexOf(@"\uD"u8) < 0)
        {
            return;
        }

        Utf8JsonReader reader = new(utf8, new JsonReaderOptions { AllowTrailingCommas = options.AllowTrailingCommas, CommentHandling = options.CommentHandling, MaxDepth = options.MaxDepth });
        while (reader.Read())
        {
            if (!reader.ValueIsEscaped)
            {
                continue;
            }

            try
            {
                reader.GetString();
            }
            catch (InvalidOperationException fault)
            {
                throw Fault("half of a surrogate pair", utf8, reader.TokenStartIndex, fault);
            }
        }
    }

    private static JsonException Fault(string what, ReadOnlySpan<byte> utf8, long index, Exception inner) =>
        new(what, path: null, utf8[..(int)index].Count((byte)'\n'), bytePositionInLine: null, inner);
}
