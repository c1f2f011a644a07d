namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>How one face differs from others.</summary>
/// <param name="RestUv">Every muscle at rest, in µV rms.</param>
/// <param name="TaskUv">Every muscle's contraction on request, in µV rms.</param>
/// <param name="Answer">How strongly the face answers to pictures; 1: as most do.</param>
/// <param name="BlinkEveryS">Seconds from one blink to the next.</param>
internal sealed record HarbourFace(double RestUv, double TaskUv, double Answer, decimal BlinkEveryS);
