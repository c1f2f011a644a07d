using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>A stretch of made noise that is read again and again from places drawn anew: long files in little time.</summary>
/// <param name="samples">One round of the noise.</param>
/// <param name="random">Decides where each part starts.</param>
internal sealed class Loop(double[] samples, Pcg32 random)
{
    private int at = (int)(random.NextDouble() * samples.Length);
    private int left;

    /// <summary>The next sample; every few seconds it goes on at another place.</summary>
    internal double Next()
    {
        if (left-- == 0)
        {
            left = 4000 + (int)(random.NextDouble() * 4000);
            at = (int)(random.NextDouble() * samples.Length);
        }

        at = at + 1 == samples.Length ? 0 : at + 1;
        return samples[at];
    }
}
