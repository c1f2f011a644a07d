using System.Runtime.CompilerServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 5.</summary>
/// <remarks>
/// The five outputs come in two mirrored pairs: with the sums t and differences u of the mirrored inputs,
/// X1,4 = (a + c1·t1 + c2·t2) ∓ i(s1·u1 + s2·u2) and X2,3 = (a + c2·t1 + c1·t2) ∓ i(s2·u1 − s1·u2), where c1, s1 are
/// cosine and sine of 2π/5 and c2, s2 of 4π/5. Since c1, c2 = −1/4 ± √5/4, both brackets share a − (t1 + t2)/4.
/// </remarks>
internal static class Radix5
{
    private const double RootOfFiveQuarter = 0.55901699437494742410;
    private const double Sin1 = 0.95105651629515357212;
    private const double Sin2 = 0.58778525229247312917;

    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var step = (nint)stage.Stride * ComplexLanes.Doubles;
        var leg = step * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w1 = ComplexLanes.Broadcast(ref twiddles, 4 * j);
            var w2 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 1);
            var w3 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 2);
            var w4 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 3);
            ref var from = ref Unsafe.Add(ref source, step * j);
            ref var to = ref Unsafe.Add(ref target, 5 * step * j);
            for (nint q = 0; q < step; q += ComplexLanes.Doubles)
            {
                var a = ComplexLanes.Load(ref from, q);
                var b = ComplexLanes.Load(ref from, q + leg);
                var c = ComplexLanes.Load(ref from, q + (2 * leg));
                var d = ComplexLanes.Load(ref from, q + (3 * leg));
                var e = ComplexLanes.Load(ref from, q + (4 * leg));
                var t1 = b + e;
                var u1 = b - e;
                var t2 = c + d;
                var u2 = c - d;
                var sum = t1 + t2;
                var middle = a - sum.Scale(0.25);
                var spread = (t1 - t2).Scale(RootOfFiveQuarter);
                var near = middle + spread;
                var nearTurned = (u1.Scale(Sin1) + u2.Scale(Sin2)).TurnBack();
                (a + sum).Store(ref to, q);
                ((near + nearTurned) * w1).Store(ref to, q + step);
                ((near - nearTurned) * w4).Store(ref to, q + (4 * step));
                var far = middle - spread;
                var farTurned = (u1.Scale(Sin2) - u2.Scale(Sin1)).TurnBack();
                ((far + farTurned) * w2).Store(ref to, q + (2 * step));
                ((far - farTurned) * w3).Store(ref to, q + (3 * step));
            }
        }
    }
}
