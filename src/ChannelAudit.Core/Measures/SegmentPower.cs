namespace ChannelAudit.Measures;

/// <summary>What a single one-second segment of a window holds below the band and in it, and how white it is.</summary>
/// <param name="Low">Power from 2 to 15 Hz, unit².</param>
/// <param name="Band">Power in the EMG band, unit², as <see cref="BandAmplitude"/> gives it.</param>
/// <param name="LowLeft">What the scoring filter leaves from 2 to 15 Hz.</param>
/// <param name="BandLeft">What it leaves in the band.</param>
/// <param name="TotalLeft">All it leaves from the first bin on, as <see cref="Surviving.Total"/>.</param>
/// <param name="Middle">Mean density from 80 to 150 Hz, unit²/Hz.</param>
/// <param name="Top">Mean density in the top fifth of the band, unit²/Hz.</param>
public readonly record struct SegmentPower(double Low, double Band, double LowLeft, double BandLeft, double TotalLeft, double Middle, double Top);
