namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 5.</summary>
/// <remarks>
/// The five outputs come in two mirrored pairs: with the sums t and differences u of the mirrored inputs,
/// X1,4 = (a + c1·t1 + c2·t2) ∓ i(s1·u1 + s2·u2) and X2,3 = (a + c2·t1 + c1·t2) ∓ i(s2·u1 − s1·u2), where c1, s1 are
/// cosine and sine of 2π/5 and c2, s2 of 4π/5.
/// </remarks>
internal static class Radix5
{
    private const double Cos1 = 0.30901699437494742410;
    private const double Cos2 = -0.80901699437494742410;
    private const double Sin1 = 0.95105651629515357212;
    private const double Sin2 = 0.58778525229247312917;

    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var s = stage.Stride;
        var leg = s * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w1 = ComplexLanes.Broadcast(ref twiddles, 4 * j);
            var w2 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 1);
            var w3 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 2);
            var w4 = ComplexLanes.Broadcast(ref twiddles, (4 * j) + 3);
            var from = s * j;
            var to = 5 * s * j;
            for (var q = 0; q < s; q++)
            {
                var a = ComplexLanes.Load(ref source, from + q);
                var b = ComplexLanes.Load(ref source, from + q + leg);
                var c = ComplexLanes.Load(ref source, from + q + (2 * leg));
                var d = ComplexLanes.Load(ref source, from + q + (3 * leg));
                var e = ComplexLanes.Load(ref source, from + q + (4 * leg));
                var t1 = b + e;
                var u1 = b - e;
                var t2 = c + d;
                var u2 = c - d;
                (a + (t1 + t2)).Store(ref target, to + q);
                var near = a + t1.Scale(Cos1) + t2.Scale(Cos2);
                var nearTurned = (u1.Scale(Sin1) + u2.Scale(Sin2)).TurnBack();
                ((near + nearTurned) * w1).Store(ref target, to + q + s);
                ((near - nearTurned) * w4).Store(ref target, to + q + (4 * s));
                var far = a + t1.Scale(Cos2) + t2.Scale(Cos1);
                var farTurned = (u1.Scale(Sin2) - u2.Scale(Sin1)).TurnBack();
                ((far + farTurned) * w2).Store(ref target, to + q + (2 * s));
                ((far - farTurned) * w3).Store(ref target, to + q + (3 * s));
            }
        }
    }
}
