namespace ChannelAudit.Recordings.Text;

/// <summary>Passes a text on with every run of blanks and tabs inside a line as one tab, and none at either end of a line.</summary>
internal sealed class BlankRunReader(TextReader inner) : TextReader
{
    private bool _pendingBlank;
    private bool _atLineStart = true;
    private int _held = -1;

    /// <inheritdoc/>
    public override int Peek() => -1;

    /// <inheritdoc/>
    public override int Read()
    {
        if (_held >= 0)
        {
            int held = _held;
            _held = -1;
            return held;
        }

        int next;
        while ((next = inner.Read()) is ' ' or '\t')
        {
            _pendingBlank = true;
        }

        bool endsLine = next is '\n' or '\r' or -1;
        bool tab = _pendingBlank && !_atLineStart && !endsLine;
        _pendingBlank = false;
        _atLineStart = endsLine;
        if (tab)
        {
            _held = next;
            return '\t';
        }

        return next;
    }

    /// <inheritdoc/>
    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    /// <inheritdoc/>
    public override int Read(Span<char> buffer)
    {
        int filled = 0;
        while (filled < buffer.Length && Read() is int next and >= 0)
        {
            buffer[filled++] = (char)next;
        }

        return filled;
    }

    /// <inheritdoc/>
    public override int ReadBlock(Span<char> buffer) => Read(buffer);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
