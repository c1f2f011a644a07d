using System.Runtime.InteropServices;

namespace ChannelAudit.Measures;

/// <summary>A mean density that waits in a file: few of them are ever asked for again, and a long recording has thousands.</summary>
public sealed class KeptDensity
{
    private readonly Spill spill;
    private readonly long place;
    private readonly int bins;

    /// <summary>Keeps a density.</summary>
    public KeptDensity(Spill spill, double[] density)
    {
        this.spill = spill;
        bins = density.Length;
        place = spill.Keep(MemoryMarshal.AsBytes(density.AsSpan()));
    }

    /// <summary>Reads it back.</summary>
    public double[] Read()
    {
        double[] density = new double[bins];
        spill.Read(place, MemoryMarshal.AsBytes(density.AsSpan()));
        return density;
    }
}
