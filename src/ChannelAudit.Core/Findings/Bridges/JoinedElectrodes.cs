namespace ChannelAudit.Findings.Bridges;

/// <summary>What two bipolar channels share when electrodes of theirs are joined by a resistance, in closed form.</summary>
/// <remarks>
/// All four contact impedances are equal (Z), and a joint of R connects one electrode of each channel, or both of each. A joint takes the share
/// k = Z / (2Z + R) of the difference between its two spots. Source: the resistor network, solved by hand; its figures stand in
/// docs/measures/bridge.md, and the tests compare them with solved networks. Correlations are sizes, without their sign.
/// </remarks>
public static class JoinedElectrodes
{
    /// <summary>The share k that a joint takes of the difference between its two spots: 0.5 for R = 0.</summary>
    /// <param name="resistance">R in units of Z, 0 and up.</param>
    public static double ShareOf(double resistance) => 1 / (2 + resistance);

    /// <summary>The correlation at rest with both electrodes joined: independent noise of one size at all electrodes.</summary>
    /// <param name="resistance">R in units of Z.</param>
    /// <param name="amplifier">Power of the amplifier's own noise, in units of the electrode noise of a channel that is not joined.</param>
    public static double RestBoth(double resistance, double amplifier = 0)
    {
        double k = ShareOf(resistance);
        return 2 * k * (1 - k) / (((1 - k) * (1 - k)) + (k * k) + amplifier);
    }

    /// <summary>The same with one electrode joined.</summary>
    /// <param name="resistance">R in units of Z.</param>
    /// <param name="amplifier">As for both.</param>
    public static double RestOne(double resistance, double amplifier = 0)
    {
        double k = ShareOf(resistance);
        return 2 * k * (1 - k) / (1 + ((1 - k) * (1 - k)) + (k * k) + (2 * amplifier));
    }

    /// <summary>The correlation with one electrode joined while a muscle at each site is equally active and nothing else is.</summary>
    /// <param name="resistance">R in units of Z.</param>
    public static double MusclesOne(double resistance)
    {
        double half = ShareOf(resistance) / 2;
        return 2 * half * (1 - half) / (((1 - half) * (1 - half)) + (half * half));
    }

    /// <summary>The part of a contraction of one site that is seen at the other, both electrodes joined: Z / (Z + R).</summary>
    /// <param name="resistance">R in units of Z.</param>
    public static double GainBoth(double resistance) => 1 / (1 + resistance);

    /// <summary>The same with one electrode joined: Z / (3Z + 2R).</summary>
    /// <param name="resistance">R in units of Z.</param>
    public static double GainOne(double resistance) => 1 / (3 + (2 * resistance));

    /// <summary>The correlation while one site contracts and a part of it arrives at the other.</summary>
    /// <param name="gain">The part that arrives.</param>
    /// <param name="rise">Power of the contraction in units of what the other site has of its own.</param>
    public static double Contraction(double gain, double rise) => gain * Math.Sqrt(rise) / Math.Sqrt(1 + (gain * gain * rise));
}
