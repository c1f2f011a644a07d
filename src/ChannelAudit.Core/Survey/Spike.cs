namespace ChannelAudit.Survey;

/// <summary>A spike with the shape of a pop.</summary>
/// <param name="Pop">Where and how high.</param>
/// <param name="Near">The 5 ms on either side of its top behind the high-pass; empty near the ends of a stretch.</param>
/// <param name="Wide">The 9 ms on either side.</param>
/// <param name="IsOfTrain">Whether the second around it shows that it is one of a unit's train.</param>
/// <param name="Alike">Peaks within half a second that could be the same unit's.</param>
/// <param name="Turned">Peaks there that are alike but turned over.</param>
internal sealed record Spike(Pop Pop, double[] Near, double[] Wide, bool IsOfTrain, int Alike, int Turned);
