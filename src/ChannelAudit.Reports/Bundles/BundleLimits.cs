using ChannelAudit.Recordings;

namespace ChannelAudit.Reports.Bundles;

/// <summary>What a bundle can hold: who writes one keeps to it, who reads one asks for it.</summary>
internal static class BundleLimits
{
    /// <summary>The lowest sampling rate of samples in a bundle, in Hz.</summary>
    public const double LeastRateHz = 1;

    /// <summary>The highest, in Hz: the work on a window grows with it, whatever samples there are.</summary>
    public const double MostRateHz = 100_000;

    /// <summary>The largest file in bytes.</summary>
    public const long LargestEntry = 1L << 28;

    /// <summary>All files together, unpacked, in bytes.</summary>
    public const long LargestTotal = 1L << 35;

    /// <summary>The most files.</summary>
    public const int MostEntries = 500_000;

    /// <summary>Whether samples of a rate can be in it.</summary>
    public static bool Takes(Rational rate) => rate.Value is >= LeastRateHz and <= MostRateHz;
}
