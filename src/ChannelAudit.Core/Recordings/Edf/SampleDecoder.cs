using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Turns the bytes of samples into values.</summary>
internal static class SampleDecoder
{
    /// <summary>Decodes little-endian two's complement samples of two or three bytes.</summary>
    /// <param name="bytes">As many samples as <paramref name="destination"/> holds.</param>
    /// <param name="sampleBytes">2 or 3.</param>
    /// <param name="scale">The scale of the signal.</param>
    /// <param name="destination">Receives the values.</param>
    public static void Decode(ReadOnlySpan<byte> bytes, int sampleBytes, in SampleScale scale, Span<double> destination)
    {
        if (sampleBytes == 3)
        {
            Decode24(bytes, scale, destination);
        }
        else if (BitConverter.IsLittleEndian)
        {
            Decode16(MemoryMarshal.Cast<byte, short>(bytes), scale, destination);
        }
        else
        {
            short[] codes = MemoryMarshal.Cast<byte, short>(bytes).ToArray();
            BinaryPrimitives.ReverseEndianness(codes, codes);
            Decode16(codes, scale, destination);
        }
    }

    private static void Decode16(ReadOnlySpan<short> codes, in SampleScale scale, Span<double> destination)
    {
        // Locals, so that the loop holds everything in registers.
        (double offset, double gain, int origin) = scale;
        codes = codes[..destination.Length];
        for (int i = 0; i < codes.Length; i++)
        {
            destination[i] = offset + ((codes[i] - origin) * gain);
        }
    }

    private static void Decode24(ReadOnlySpan<byte> bytes, in SampleScale scale, Span<double> destination)
    {
        (double offset, double gain, int origin) = scale;
        bytes = bytes[..(3 * destination.Length)];
        for (int i = 0; i < destination.Length; i++)
        {
            int at = 3 * i;
            int code = bytes[at] | (bytes[at + 1] << 8) | ((sbyte)bytes[at + 2] << 16);
            destination[i] = offset + ((code - origin) * gain);
        }
    }
}
