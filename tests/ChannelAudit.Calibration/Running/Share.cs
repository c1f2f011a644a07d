using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Calibration.Running;

/// <summary>A share of trial-channels with a 95 % interval that takes the trials of a recording for one observation.</summary>
/// <param name="Value">The share; null when there was nothing to count.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <remarks>
/// Wilson's score interval on as many observations as recordings: trials of one recording share their face and amplifier, and counting each for itself
/// would promise too much. The share is rounded to whole recordings away from the nearer end of the scale.
/// </remarks>
public readonly record struct Share(double? Value, double Low, double High)
{
    /// <summary>A share.</summary>
    public static Share Of(int successes, int cells, int recordings)
    {
        if (cells == 0 || recordings == 0)
        {
            return new Share(null, 0, 1);
        }

        double share = (double)successes / cells;
        long least = (long)Math.Floor(share * recordings);
        long most = (long)Math.Ceiling(share * recordings);
        return new Share(share, WilsonInterval.Of(least, recordings).Low, WilsonInterval.Of(most, recordings).High);
    }
}
