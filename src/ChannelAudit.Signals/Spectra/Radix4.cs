using System.Runtime.CompilerServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 4.</summary>
internal static class Radix4
{
    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var step = (nint)stage.Stride * ComplexLanes.Doubles;
        var leg = step * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w1 = ComplexLanes.Broadcast(ref twiddles, 3 * j);
            var w2 = ComplexLanes.Broadcast(ref twiddles, (3 * j) + 1);
            var w3 = ComplexLanes.Broadcast(ref twiddles, (3 * j) + 2);
            ref var from = ref Unsafe.Add(ref source, step * j);
            ref var to = ref Unsafe.Add(ref target, 4 * step * j);
            for (nint q = 0; q < step; q += ComplexLanes.Doubles)
            {
                var a = ComplexLanes.Load(ref from, q);
                var b = ComplexLanes.Load(ref from, q + leg);
                var c = ComplexLanes.Load(ref from, q + (2 * leg));
                var d = ComplexLanes.Load(ref from, q + (3 * leg));
                var even = a + c;
                var odd = b + d;
                var evenTurned = a - c;
                var oddTurned = (b - d).TurnBack();
                (even + odd).Store(ref to, q);
                ((evenTurned + oddTurned) * w1).Store(ref to, q + step);
                ((even - odd) * w2).Store(ref to, q + (2 * step));
                ((evenTurned - oddTurned) * w3).Store(ref to, q + (3 * step));
            }
        }
    }
}
