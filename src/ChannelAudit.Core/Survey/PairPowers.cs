using System.Runtime.Intrinsics;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>The power of four segments of one channel in the bands in which pairs are compared, in the scale of the transform.</summary>
/// <param name="Low">30 to 250 Hz.</param>
/// <param name="High">300 to 450 Hz.</param>
internal readonly record struct PairPowers(Vector256<double> Low, Vector256<double> High)
{
    /// <summary>The powers of the present segments.</summary>
    public static PairPowers Of(SpectralFrame frame, SegmentBatch batch, int member) => new(
        LaneSums.Power(frame.PairBands.Low, batch.Re(member), batch.Im(member)),
        LaneSums.Power(frame.PairBands.High, batch.Re(member), batch.Im(member)));
}
