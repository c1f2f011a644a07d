namespace ChannelAudit.Signals.Spectra;

/// <summary>Joins the sums of four lanes in one fixed order.</summary>
internal static class FourLaneSum
{
    public static double Of(ReadOnlySpan<double> sums, int bin)
    {
        var four = sums.Slice(SegmentBatch.Lanes * bin, SegmentBatch.Lanes);
        return (four[0] + four[1]) + (four[2] + four[3]);
    }
}
