namespace ChannelAudit.Survey;

/// <summary>Consecutive samples of one channel.</summary>
/// <param name="Number">From 0, over all pieces.</param>
/// <param name="Start">Timeline index of the first new sample.</param>
/// <param name="Samples">The new samples; valid until the next block.</param>
/// <param name="WithCarry">The new samples with those before them in the same piece, up to the carry asked for.</param>
/// <param name="EndsPiece">Whether the piece ends with this block.</param>
public readonly record struct SampleBlock(
    int Number, long Start, ReadOnlyMemory<double> Samples, ReadOnlyMemory<double> WithCarry, bool EndsPiece)
{
    /// <summary>Timeline index behind the last sample.</summary>
    public long End => Start + Samples.Length;

    /// <summary>Timeline index of the first sample of <see cref="WithCarry"/>.</summary>
    public long CarryStart => End - WithCarry.Length;
}
