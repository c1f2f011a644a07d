namespace ChannelAudit.Recordings.Text;

/// <summary>The first bytes of a file as a stream of their own: what is written behind them meanwhile is not seen.</summary>
/// <param name="whole">The file; it stays open.</param>
/// <param name="length">How many bytes.</param>
internal sealed class LeadingStream(Stream whole, long length) : Stream
{
    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => true;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => length;

    /// <inheritdoc/>
    public override long Position
    {
        get => whole.Position;
        set => whole.Position = value;
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer) => whole.Read(buffer[..(int)Math.Clamp(length - whole.Position, 0, buffer.Length)]);

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) =>
        origin == SeekOrigin.End ? whole.Seek(length + offset, SeekOrigin.Begin) : whole.Seek(offset, origin);

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException("A view of a file has its length.");

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException("A view of a file is not written to.");
}
