using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Doubles that start on a cache line, so that no element of the transforms lies across two.</summary>
internal sealed class AlignedBuffer
{
    private const int LineBytes = 64;

    private readonly double[] _store;
    private readonly int _offset;

    /// <summary>Takes zeroed memory that the garbage collector does not move.</summary>
    /// <param name="length">Number of doubles.</param>
    public AlignedBuffer(int length)
    {
        Length = length;
        _store = GC.AllocateArray<double>(length + (LineBytes / sizeof(double)), pinned: true);
        var over = (int)(Marshal.UnsafeAddrOfPinnedArrayElement(_store, 0) % LineBytes);
        _offset = over == 0 ? 0 : (LineBytes - over) / sizeof(double);
    }

    /// <summary>Gets the number of doubles.</summary>
    public int Length { get; }

    /// <summary>Gets the memory.</summary>
    public Span<double> Span => _store.AsSpan(_offset, Length);
}
