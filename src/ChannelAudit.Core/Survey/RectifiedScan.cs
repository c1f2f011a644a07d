namespace ChannelAudit.Survey;

/// <summary>The mean rectified amplitude of a window behind the scoring filter's high-pass and low-pass.</summary>
/// <param name="Mean">Mean magnitude; null when the filter has no high-pass to settle, or there is no sample.</param>
/// <param name="BesidePops">The same without the 50 ms on either side of each pop; null when they leave nothing.</param>
public readonly record struct RectifiedScan(double? Mean, double? BesidePops);
