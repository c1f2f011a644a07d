namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 4.</summary>
internal static class Radix4
{
    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var s = stage.Stride;
        var leg = s * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w1 = ComplexLanes.Broadcast(ref twiddles, 3 * j);
            var w2 = ComplexLanes.Broadcast(ref twiddles, (3 * j) + 1);
            var w3 = ComplexLanes.Broadcast(ref twiddles, (3 * j) + 2);
            var from = s * j;
            var to = 4 * s * j;
            for (var q = 0; q < s; q++)
            {
                var a = ComplexLanes.Load(ref source, from + q);
                var b = ComplexLanes.Load(ref source, from + q + leg);
                var c = ComplexLanes.Load(ref source, from + q + (2 * leg));
                var d = ComplexLanes.Load(ref source, from + q + (3 * leg));
                var even = a + c;
                var odd = b + d;
                var evenTurned = a - c;
                var oddTurned = (b - d).TurnBack();
                (even + odd).Store(ref target, to + q);
                ((evenTurned + oddTurned) * w1).Store(ref target, to + q + s);
                ((even - odd) * w2).Store(ref target, to + q + (2 * s));
                ((evenTurned - oddTurned) * w3).Store(ref target, to + q + (3 * s));
            }
        }
    }
}
