using System.Text;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis;

/// <summary>A random generator for each noise by its name.</summary>
/// <remarks>The name, not an order of drawing, decides the numbers: adding a site or a fault leaves all other noises as they were.</remarks>
internal static class NoiseStream
{
    /// <summary>The generator of one noise.</summary>
    /// <param name="seed">The plan's seed.</param>
    /// <param name="name">What the noise is, such as <c>amplifier:cheek</c>.</param>
    internal static Pcg32 Of(ulong seed, string name)
    {
        // FNV-1a, 64 bits: offset basis and prime as its authors publish them (from memory).
        ulong hash = 14695981039346656037;
        foreach (byte letter in Encoding.UTF8.GetBytes(name))
        {
            hash = unchecked((hash ^ letter) * 1099511628211);
        }

        return new Pcg32(seed, hash);
    }
}
