namespace ChannelAudit.Signals.Spectra;

/// <summary>The pass of radix 2.</summary>
internal static class Radix2
{
    /// <summary>Runs the pass from one buffer to another of the same length; see <see cref="TransformStage"/>.</summary>
    public static void Run(TransformStage stage, ref double source, ref double target)
    {
        var s = stage.Stride;
        var leg = s * stage.Blocks;
        ref var twiddles = ref stage.Twiddles;
        for (var j = 0; j < stage.Blocks; j++)
        {
            var w = ComplexLanes.Broadcast(ref twiddles, j);
            var from = s * j;
            var to = 2 * s * j;
            for (var q = 0; q < s; q++)
            {
                var a = ComplexLanes.Load(ref source, from + q);
                var b = ComplexLanes.Load(ref source, from + q + leg);
                (a + b).Store(ref target, to + q);
                ((a - b) * w).Store(ref target, to + q + s);
            }
        }
    }
}
