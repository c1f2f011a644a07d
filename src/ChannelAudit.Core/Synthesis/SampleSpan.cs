namespace ChannelAudit.Synthesis;

/// <summary>A run of samples on the time axis.</summary>
/// <param name="From">Index of the first.</param>
/// <param name="To">Index behind the last.</param>
public readonly record struct SampleSpan(int From, int To)
{
    /// <summary>How many samples.</summary>
    public int Length => To - From;

    /// <summary>The part of a buffer that the run covers.</summary>
    /// <param name="buffer">Samples of the whole time axis.</param>
    public Span<double> In(double[] buffer) => buffer.AsSpan(From, Length);
}
