using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Samples of an EDF or 24-bit file. Two blocks of whole records are held, so that reading window after window, and channel after
/// channel inside a window, reads the file once; long ranges of one channel are read around the blocks.</summary>
internal sealed class EdfSampleSource : ISampleSource
{
    // Small enough to stay in the processor's cache while every channel is decoded from it.
    private const int BlockBytes = 1 << 18;
    private const long LargestCachedRecord = 8 * BlockBytes;
    private const int SliceBytes = 96 * 1024;

    // A read of fewer bytes costs more than copying its neighbours along.
    private const int SmallestSlice = 2048;

    private readonly EdfFile file;
    private readonly EdfHeader header;
    private readonly long records;
    private readonly ImmutableArray<SampleScale> scales;
    private readonly long recordsPerBlock;
    private readonly Block[] blocks = [new(), new()];
    private byte[] slice = [];

    /// <summary>Takes over the open file.</summary>
    /// <param name="file">The file; disposed with this.</param>
    /// <param name="header">Its header.</param>
    /// <param name="records">Complete records in the file.</param>
    /// <param name="scales">The scale of each signal.</param>
    public EdfSampleSource(EdfFile file, EdfHeader header, long records, ImmutableArray<SampleScale> scales)
    {
        this.file = file;
        this.header = header;
        this.records = records;
        this.scales = scales;
        recordsPerBlock = header.RecordBytes > LargestCachedRecord ? 0 : Math.Max(1, BlockBytes / header.RecordBytes);
    }

    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(channel);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(channel, header.Signals.Length);
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        EdfSignalHeader signal = header.Signals[channel];
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, (records * signal.SamplesPerRecord) - destination.Length);
        bool isAround = ReadsAroundBlocks(signal, destination.Length);
        while (!destination.IsEmpty)
        {
            (long record, long within) = Math.DivRem(start, signal.SamplesPerRecord);
            int count = (int)Math.Min(signal.SamplesPerRecord - within, destination.Length);
            if (isAround)
            {
                count = Math.Min(count, SliceBytes / header.SampleBytes);
            }

            long place = signal.RecordOffset + (within * header.SampleBytes);
            ReadOnlySpan<byte> bytes = isAround
                ? FromFile(record, place, count * header.SampleBytes)
                : FromBlock(record, place, count * header.SampleBytes);
            SampleDecoder.Decode(bytes, header.SampleBytes, scales[channel], destination[..count]);
            destination = destination[count..];
            start += count;
        }
    }

    // The file is read at places, which any number of threads may do; blocks are each reader's own. Whoever has the first reader closes the file.
    /// <inheritdoc/>
    public ISampleSource Another() => new EdfSampleSource(file, header, records, scales);

    /// <inheritdoc/>
    public void Dispose() => file.Dispose();

    private bool ReadsAroundBlocks(EdfSignalHeader signal, int samples)
    {
        if (recordsPerBlock == 0)
        {
            return true;
        }

        bool isLong = samples / Math.Max(1, signal.SamplesPerRecord) > recordsPerBlock * blocks.Length;
        return isLong && (long)signal.SamplesPerRecord * header.SampleBytes >= SmallestSlice;
    }

    private ReadOnlySpan<byte> FromFile(long record, long place, int length)
    {
        if (slice.Length < length)
        {
            slice = new byte[length];
        }

        Span<byte> bytes = slice.AsSpan(0, length);
        file.Read(header.HeaderBytes + (record * header.RecordBytes) + place, bytes);
        return bytes;
    }

    private ReadOnlySpan<byte> FromBlock(long record, long place, int length)
    {
        (long number, long recordInBlock) = Math.DivRem(record, recordsPerBlock);
        if (blocks[0].Number != number)
        {
            // The block used last is kept, the other one makes room.
            (blocks[0], blocks[1]) = (blocks[1], blocks[0]);
            if (blocks[0].Number != number)
            {
                Load(blocks[0], number);
            }
        }

        return blocks[0].Bytes.AsSpan((int)((recordInBlock * header.RecordBytes) + place), length);
    }

    private void Load(Block block, long number)
    {
        long first = number * recordsPerBlock;
        int length = (int)(Math.Min(recordsPerBlock, records - first) * header.RecordBytes);
        if (block.Bytes.Length < length)
        {
            block.Bytes = new byte[length];
        }

        // Unknown until the read has worked.
        block.Number = -1;
        file.Read(header.HeaderBytes + (first * header.RecordBytes), block.Bytes.AsSpan(0, length));
        block.Number = number;
    }

    private sealed class Block
    {
        public long Number { get; set; } = -1;

        public byte[] Bytes { get; set; } = [];
    }
}
