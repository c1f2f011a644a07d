namespace ChannelAudit.Synthesis;

/// <summary>The muscle under a site as two independent sources, each a little nearer to one of the electrodes.</summary>
/// <remarks>
/// With unit noises u and v, level L and asymmetry q, the voltage across the pair is m = L·(u + v)/√2 and the mean potential of
/// the pair is c = q·L·(u − v)/√2; the electrodes see c ± m/2 (methods 1.2, Model II, with c from the muscle itself).
/// </remarks>
internal static class MuscleSources
{
    /// <summary>Fills in what the muscle offers at the electrodes of one site.</summary>
    internal static void Fill(SignalPath path, int site)
    {
        SiteSignals signals = path.Sites[site];
        if (signals.LevelUv.AsSpan().IndexOfAnyExcept(0.0) < 0)
        {
            return;
        }

        string name = signals.Site.Name;
        double rate = path.Plan.Rate.Value;
        double[] u = signals.First;
        double[] v = signals.Second;
        ShapedNoise.Fill(NoiseStream.Of(path.Plan.Seed, "muscle-1:" + name), NoiseBand.Muscle, rate, u);
        ShapedNoise.Fill(NoiseStream.Of(path.Plan.Seed, "muscle-2:" + name), NoiseBand.Muscle, rate, v);
        double half = Math.Sqrt(0.5);
        for (int i = 0; i < u.Length; i++)
        {
            double scale = signals.LevelUv[i] * half;
            double across = scale * (u[i] + v[i]);
            double mean = signals.Site.Asymmetry * scale * (u[i] - v[i]);
            signals.Muscle[i] = across;
            signals.First[i] = mean + (across / 2);
            signals.Second[i] = mean - (across / 2);
        }
    }
}
