using System.Globalization;
using System.Text;

namespace ChannelAudit.Survey;

/// <summary>A fingerprint of a signal that no gain, offset, sign or header changes.</summary>
/// <remarks>
/// For each of the first 32 whole seconds that are not flat, where in it the least and the greatest sample lie (the first of equal ones), in either order, folded to
/// 16 bits. Two signals agree in a second by chance once in 65 536; rounding moves an extreme now and then. What is cut at its start, filtered or resampled is
/// another signal.
/// </remarks>
internal sealed class SignalPrint
{
    /// <summary>Seconds that are looked at.</summary>
    public const int Seconds = 32;

    // Knuth, The Art of Computer Programming 3, 6.4: multiplication by the golden ratio spreads neighbouring numbers.
    private const ulong Spread = 0x9E37_79B9_7F4A_7C15;

    private readonly int second;
    private readonly StringBuilder words = new();
    private int taken;

    /// <summary>Starts.</summary>
    /// <param name="second">Samples of a second.</param>
    public SignalPrint(int second) => this.second = second;

    /// <summary>Adds a block that starts with a whole second.</summary>
    public void Add(ReadOnlySpan<double> samples)
    {
        for (int start = 0; taken < Seconds && start + second <= samples.Length; start += second)
        {
            AddSecond(samples.Slice(start, second));
        }
    }

    /// <summary>The fingerprint: four hexadecimal digits a second.</summary>
    public string Finish() => words.ToString();

    private void AddSecond(ReadOnlySpan<double> samples)
    {
        int least = 0;
        int greatest = 0;
        for (int i = 1; i < samples.Length; i++)
        {
            least = samples[i] < samples[least] ? i : least;
            greatest = samples[i] > samples[greatest] ? i : greatest;
        }

        if (samples[least] == samples[greatest])
        {
            return;
        }

        ulong places = ((ulong)Math.Min(least, greatest) * (ulong)second) + (ulong)Math.Max(least, greatest);
        words.Append(((places * Spread) >> 48).ToString("x4", CultureInfo.InvariantCulture));
        taken++;
    }
}
