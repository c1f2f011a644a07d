using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ChannelAudit.Reports.Json;

/// <summary>A JSON file in the making: indented by one blank, LF, and long lists with one entry a line.</summary>
/// <remarks>Strings are escaped by the strict default encoder: what came from a file cannot leave its string, nor act as markup when the
/// text is put into a page.</remarks>
internal sealed class JsonText : IDisposable
{
    /// <summary>Room for a part that is handed to a stream, and the rows that fill it.</summary>
    public const int BytesAPart = 1 << 17;

    private const int DeepestIndent = 16;
    private const int HandedFrom = 1 << 16;

    private readonly ArrayBufferWriter<byte> _text;
    private readonly ArrayBufferWriter<byte> _row = new(512);
    private readonly Utf8JsonWriter _rowWriter;
    private readonly Action<ReadOnlyMemory<byte>>? _hand;

    /// <summary>Starts a file.</summary>
    /// <param name="expectedBytes">About how long it gets.</param>
    /// <param name="stream">Takes the text as it comes; null to hold all of it.</param>
    public JsonText(int expectedBytes = 4096, Stream? stream = null)
    {
        _hand = stream is null ? null : bytes => stream.Write(bytes.Span);
        _text = new ArrayBufferWriter<byte>(expectedBytes);
        Writer = new Utf8JsonWriter(_text, new JsonWriterOptions
        {
            Indented = true,
            IndentSize = 1,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.Default,
        });
        _rowWriter = new Utf8JsonWriter(_row, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default, SkipValidation = true });
    }

    /// <summary>The writer of everything that is not a row.</summary>
    public Utf8JsonWriter Writer { get; }

    /// <summary>A list with one entry a line.</summary>
    public void Rows<T>(string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        Writer.WriteStartArray(name);
        foreach (T item in items)
        {
            Row(item, write);
        }

        Writer.WriteEndArray();
    }

    /// <summary>The bytes, with a line end behind the last brace.</summary>
    public byte[] ToArray()
    {
        Writer.Flush();
        _text.Write("\n"u8);
        return _text.WrittenSpan.ToArray();
    }

    /// <summary>Hands the rest to the stream, with a line end behind the last brace.</summary>
    public void Finish()
    {
        Writer.Flush();
        _text.Write("\n"u8);
        Hand();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _rowWriter.Dispose();
        Writer.Dispose();
    }

    private void Row<T>(T item, Action<Utf8JsonWriter, T> write)
    {
        // A raw value is not indented by the writer, so it brings its own line end and blanks.
        Span<byte> blanks = stackalloc byte[DeepestIndent];
        blanks.Fill((byte)' ');
        _row.ResetWrittenCount();
        _row.Write("\n"u8);
        _row.Write(blanks[..Math.Min(DeepestIndent, Writer.CurrentDepth)]);
        _rowWriter.Reset(_row);
        write(_rowWriter, item);
        _rowWriter.Flush();
        Writer.WriteRawValue(_row.WrittenSpan, skipInputValidation: true);
        if (_hand is not null && _text.WrittenCount + Writer.BytesPending >= HandedFrom)
        {
            Writer.Flush();
            Hand();
        }
    }

    private void Hand()
    {
        _hand!(_text.WrittenMemory);
        _text.ResetWrittenCount();
    }
}
