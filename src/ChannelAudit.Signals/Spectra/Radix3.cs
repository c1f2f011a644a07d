using System.Runtime.CompilerServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 3.</summary>
internal static class Radix3
{
    /// <summary>sin(2π/3).</summary>
    private const double Sin = 0.86602540378443864676;

    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var step = (nint)stage.Stride * ComplexLanes.Doubles;
        var leg = step * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w1 = ComplexLanes.Broadcast(ref twiddles, 2 * j);
            var w2 = ComplexLanes.Broadcast(ref twiddles, (2 * j) + 1);
            ref var from = ref Unsafe.Add(ref source, step * j);
            ref var to = ref Unsafe.Add(ref target, 3 * step * j);
            for (nint q = 0; q < step; q += ComplexLanes.Doubles)
            {
                var a = ComplexLanes.Load(ref from, q);
                var b = ComplexLanes.Load(ref from, q + leg);
                var c = ComplexLanes.Load(ref from, q + (2 * leg));
                var sum = b + c;
                var turned = (b - c).TurnBack().Scale(Sin);
                var middle = a - sum.Scale(0.5);
                (a + sum).Store(ref to, q);
                ((middle + turned) * w1).Store(ref to, q + step);
                ((middle - turned) * w2).Store(ref to, q + (2 * step));
            }
        }
    }
}
