using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A baseline that wanders along a straight line, on an offset if asked for; it stays at its last level behind its end.</summary>
/// <param name="Site">The site.</param>
/// <param name="SlopeUvPerMin">Slope in µV/min, of either sign.</param>
/// <param name="OffsetUv">Level from the start of the stretch on, in µV: a large one eats the room to the rail.</param>
public sealed record Drift(string Site, double SlopeUvPerMin, double OffsetUv = 0) : Fault
{
    /// <inheritdoc/>
    /// <remarks>The channel's own offset and settling are part of the truth; a high-passed amplifier hides it all.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        SampleSpan span = made.Plan.SamplesOf(Span);
        double slope = SlopeUvPerMin + made.SettlingUvPerMin(Site);
        double perSample = 1 / (60 * made.Plan.Rate.Value);
        double start = OffsetUv + made.OffsetUv(Site) + (made.SettlingUvPerMin(Site) * span.From * perSample);
        double end = start + (slope * span.Length * perSample);
        Channel channel = made.ChannelOf(Site);
        double room = Math.Min(RoomLeft(channel, start), RoomLeft(channel, end));
        return
        [
            TruthOf(made, ReasonCode.Drift, [Site], "drift_slope", slope, "uV/min"),
            TruthOf(made, ReasonCode.Drift, [Site], "headroom", room, "%"),
        ];
    }

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] input = path.Site(Site).Input;
        double perSample = SlopeUvPerMin / 60 / path.Plan.Rate.Value;
        for (int i = span.From; i < input.Length; i++)
        {
            input[i] += OffsetUv + (perSample * (Math.Min(i, span.To) - span.From));
        }
    }

    /// <summary>What is left to the nearer rail, in % of that rail's distance from zero.</summary>
    private static double RoomLeft(Channel channel, double levelUv)
    {
        double upper = channel.UpperRail!.Value;
        double lower = channel.LowerRail!.Value;
        return 100 * Math.Max(0, Math.Min((upper - levelUv) / upper, (levelUv - lower) / -lower));
    }
}
