using System.Runtime.CompilerServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 2.</summary>
internal static class Radix2
{
    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var step = (nint)stage.Stride * ComplexLanes.Doubles;
        var leg = step * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w = ComplexLanes.Broadcast(ref twiddles, j);
            ref var from = ref Unsafe.Add(ref source, step * j);
            ref var to = ref Unsafe.Add(ref target, 2 * step * j);
            for (nint q = 0; q < step; q += ComplexLanes.Doubles)
            {
                var a = ComplexLanes.Load(ref from, q);
                var b = ComplexLanes.Load(ref from, q + leg);
                (a + b).Store(ref to, q);
                ((a - b) * w).Store(ref to, q + step);
            }
        }
    }
}
