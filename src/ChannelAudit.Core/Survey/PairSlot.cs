using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Two channels of a group while their segments go by.</summary>
internal sealed class PairSlot
{
    private readonly CrossAccumulator cross;
    private readonly double[] re;
    private readonly double[] im;

    private PairSlot(int a, int b, PairBands bands, Spill? spill)
    {
        A = a;
        B = b;
        Table = new PairTable(bands, spill);
        cross = new CrossAccumulator(bands.FirstBin, Math.Max(1, bands.BinCount));
        (re, im) = (new double[bands.BinCount], new double[bands.BinCount]);
    }

    /// <summary>The first channel's position in the group.</summary>
    public int A { get; }

    /// <summary>The second channel's position in the group.</summary>
    public int B { get; }

    /// <summary>What the two share in each segment.</summary>
    public PairTable Table { get; }

    /// <summary>Segments accumulated so far.</summary>
    public int Segments => cross.Segments;

    /// <summary>The pairs of a group that are compared, first before second.</summary>
    /// <param name="frames">The channels' frames.</param>
    /// <param name="isCompared">Whether two of them are compared; null: all are.</param>
    /// <param name="spill">Takes what of a long recording does not stay in memory.</param>
    public static IEnumerable<PairSlot> All(ImmutableArray<SpectralFrame> frames, Func<int, int, bool>? isCompared = null, Spill? spill = null)
    {
        for (int a = 0; a < frames.Length; a++)
        {
            for (int b = a + 1; b < frames.Length; b++)
            {
                if (isCompared is null || isCompared(a, b))
                {
                    yield return new PairSlot(a, b, PairBands.Of(frames[a], frames[b]), spill);
                }
            }
        }
    }

    /// <summary>Adds the present segments to the table and the mean.</summary>
    /// <param name="batch">The segments.</param>
    /// <param name="powers">The powers of each channel in the bands that all pairs of the group can have.</param>
    public void Add(SegmentBatch batch, PairPowers[] powers)
    {
        AddToMean(batch);
        AddToTable(batch, powers[A], powers[B]);
    }

    /// <summary>Adds the present segments to the mean only.</summary>
    public void AddToMean(SegmentBatch batch)
    {
        if (Table.Bands.HasLow)
        {
            cross.Add(batch, A, B);
        }
    }

    /// <summary>Forgets the mean.</summary>
    public void ResetMean() => cross.Reset();

    /// <summary>The reading of the mean.</summary>
    public PairReading? Reading(SegmentBatch shape, double[] densityA, double[] densityB)
    {
        if (cross.Segments == 0 || !Table.Bands.HasLow)
        {
            return null;
        }

        cross.Density(shape, re, im);
        return PairReading.Of(Table.Bands, re, im, densityA, densityB, cross.Segments);
    }

    private void AddToTable(SegmentBatch batch, PairPowers ofA, PairPowers ofB)
    {
        PairBands bands = Table.Bands;
        (Vector256<double> re, Vector256<double> im) = LaneSums.Cross(bands.Low, batch.Re(A), batch.Im(A), batch.Re(B), batch.Im(B));
        (Vector256<double> reHigh, _) = LaneSums.Cross(bands.High, batch.Re(A), batch.Im(A), batch.Re(B), batch.Im(B));
        Vector256<double> both = Vector256.Sqrt(ofA.Low * ofB.Low);
        Vector256<double> bothHigh = Vector256.Sqrt(ofA.High * ofB.High);
        for (int lane = 0; lane < batch.Segments; lane++)
        {
            Table.Rho.Add((float)(re[lane] / both[lane]));
            Table.RhoHigh.Add((float)(reHigh[lane] / bothHigh[lane]));
            Table.Imaginary.Add((float)(im[lane] / both[lane]));
            Table.GainAb.Add((float)(re[lane] / ofA.Low[lane]));
            Table.GainBa.Add((float)(re[lane] / ofB.Low[lane]));
        }
    }
}
