namespace ChannelAudit.Measures;

/// <summary>What a single one-second segment of a window holds below the band and in it.</summary>
/// <param name="Low">Power from 2 to 15 Hz, unit².</param>
/// <param name="Band">Power in the EMG band, unit², as <see cref="BandAmplitude"/> gives it.</param>
public readonly record struct SegmentPower(double Low, double Band);
