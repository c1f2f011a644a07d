using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>What Fisher's exact test says of a table of two by two.</summary>
/// <param name="TwoSided">Probability of all tables with these margins that are no more probable than this one.</param>
/// <param name="Greater">Probability of a first cell as large as this or larger.</param>
/// <param name="Less">Probability of a first cell as small as this or smaller.</param>
/// <param name="OddsRatio">The sample's odds ratio ad/(bc); null when b or c is 0 and it has no bound or no meaning.</param>
/// <param name="SmallestTwoSided">The smallest two-sided probability that any table with these margins has.</param>
/// <param name="ConditionalOddsRatio">The odds ratio under which a first cell as observed is to be expected, given the margins (its maximum likelihood); null at either end of what the margins allow.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FisherResult(double TwoSided, double Greater, double Less, double? OddsRatio, double SmallestTwoSided, double? ConditionalOddsRatio);
