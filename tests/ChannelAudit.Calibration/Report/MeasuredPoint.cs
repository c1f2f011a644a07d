using ChannelAudit.Calibration.Running;

namespace ChannelAudit.Calibration.Report;

/// <summary>A point of the study with what came of it.</summary>
/// <param name="Generator">Which generator made the recordings: <c>first</c> or <c>second</c>.</param>
/// <param name="Point">Fault and severity.</param>
/// <param name="Count">The counts.</param>
public sealed record MeasuredPoint(string Generator, StudyPoint Point, PointCount Count)
{
    /// <summary>The generator of this program.</summary>
    public const string First = "first";

    /// <summary>The generator in NumPy.</summary>
    public const string Second = "second";
}
