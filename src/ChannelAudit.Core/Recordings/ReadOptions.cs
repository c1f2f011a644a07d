namespace ChannelAudit.Recordings;

/// <summary>What the setup says about files that do not say it themselves.</summary>
/// <param name="SamplingHz">Rate of a text file without a time column.</param>
/// <param name="Unit">Unit of a file without one: <c>uV</c>, <c>mV</c>, <c>V</c>, or <c>none</c> for raw codes.</param>
/// <param name="TemporaryFolder">Where a text file's numbers are spooled; the system's when null.</param>
/// <param name="IsGrowing">Whether the file is still being written: the last line of a text may be half there, and is left for the next look.</param>
public sealed record ReadOptions(decimal? SamplingHz = null, string? Unit = null, string? TemporaryFolder = null, bool IsGrowing = false);
