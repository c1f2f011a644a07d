using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

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
        int done = DecodeLanes(codes, offset, gain, origin, destination);
        for (int i = done; i < codes.Length; i++)
        {
            destination[i] = offset + ((codes[i] - origin) * gain);
        }
    }

    /// <summary>Eight samples at a time by the same steps as one at a time, so that equal codes give equal values.</summary>
    private static int DecodeLanes(ReadOnlySpan<short> codes, double offset, double gain, int origin, Span<double> destination)
    {
        Vector256<double> offsets = Vector256.Create(offset);
        Vector256<double> gains = Vector256.Create(gain);
        Vector256<int> origins = Vector256.Create(origin);
        ReadOnlySpan<Vector128<short>> from = MemoryMarshal.Cast<short, Vector128<short>>(codes);
        Span<Vector256<double>> to = MemoryMarshal.Cast<double, Vector256<double>>(destination);
        for (int i = 0; i < from.Length; i++)
        {
            (Vector128<int> low, Vector128<int> high) = Vector128.Widen(from[i]);
            Vector256<int> whole = Vector256.Create(low, high) - origins;
            to[2 * i] = offsets + (ToDouble(whole.GetLower()) * gains);
            to[(2 * i) + 1] = offsets + (ToDouble(whole.GetUpper()) * gains);
        }

        return from.Length * Vector128<short>.Count;
    }

    private static Vector256<double> ToDouble(Vector128<int> codes) =>
        Avx.IsSupported ? Avx.ConvertToVector256Double(codes) : Vector256.ConvertToDouble(Widened(codes));

    private static Vector256<long> Widened(Vector128<int> codes)
    {
        (Vector128<long> low, Vector128<long> high) = Vector128.Widen(codes);
        return Vector256.Create(low, high);
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
