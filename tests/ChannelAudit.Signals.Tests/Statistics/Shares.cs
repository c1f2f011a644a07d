using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Statistics;

/// <summary>The shares of fixtures/oracles/make_oracles.py: eighths, so that ties happen.</summary>
internal static class Shares
{
    public static double[] Of(uint seed, int count) => [.. OracleSignals.Noise(seed, count).Select(value => Math.Floor(9 * (value + 0.5)) / 8)];
}
