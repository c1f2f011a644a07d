using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Four complex numbers, one a lane: the element of every transform here.</summary>
/// <remarks>
/// In memory four real parts are followed by four imaginary parts. All operations are elementwise and none is a fused
/// multiply-add, so a lane's result depends neither on the processor nor on the other lanes.
/// </remarks>
internal readonly struct ComplexLanes(Vector256<double> re, Vector256<double> im)
{
    /// <summary>Doubles one element takes in memory.</summary>
    public const int Doubles = 8;

    public readonly Vector256<double> Re = re;

    public readonly Vector256<double> Im = im;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator +(ComplexLanes a, ComplexLanes b) => new(a.Re + b.Re, a.Im + b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator -(ComplexLanes a, ComplexLanes b) => new(a.Re - b.Re, a.Im - b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(ComplexLanes a, ComplexLanes b) =>
        new((a.Re * b.Re) - (a.Im * b.Im), (a.Re * b.Im) + (a.Im * b.Re));

    /// <summary>Gives one complex number in all four lanes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes Broadcast(ref double table, int index)
    {
        ref var entry = ref Unsafe.Add(ref table, 2 * index);
        return new(Vector256.Create(entry), Vector256.Create(Unsafe.Add(ref entry, 1)));
    }

    /// <summary>Reads the element that starts some doubles after an origin.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes Load(ref double origin, nint offset)
    {
        ref var element = ref Unsafe.Add(ref origin, offset);
        return new(Vector256.LoadUnsafe(ref element), Vector256.LoadUnsafe(ref element, 4));
    }

    /// <summary>Writes the element that starts some doubles after an origin.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(ref double origin, nint offset)
    {
        ref var element = ref Unsafe.Add(ref origin, offset);
        Re.StoreUnsafe(ref element);
        Im.StoreUnsafe(ref element, 4);
    }

    /// <summary>Multiplies by a real number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ComplexLanes Scale(double factor) => new(Re * Vector256.Create(factor), Im * Vector256.Create(factor));

    /// <summary>Multiplies by −i.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ComplexLanes TurnBack() => new(Im, -Re);

    /// <summary>Exchanges real and imaginary part.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ComplexLanes Swap() => new(Im, Re);
}
