using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Detectability;

/// <summary>What planting does to samples.</summary>
internal static class PlantEdits
{
    // As the faults of made recordings have them: odd harmonics, as lamps and supplies make.
    private static readonly ImmutableArray<double> MainsHarmonics = [1, 0, 0.25, 0, 0.1];

    /// <summary>A tone with the harmonics of mains.</summary>
    public static PlantEdit Mains(PlantHost host, PlantPlace place, double rmsUv, ulong seed) =>
        Tone(host, place, rmsUv, host.Result.Mains.Hz, [.. MainsHarmonics.Where((_, i) => (i + 1) * host.Result.Mains.Hz < 0.45 * RateOf(host, place))], seed);

    /// <summary>A tone from a random phase on.</summary>
    public static PlantEdit Tone(PlantHost host, PlantPlace place, double rmsUv, double hz, ImmutableArray<double> harmonics, ulong seed)
    {
        double phase = NoiseStream.Of(seed, "phase").NextDouble();
        double scale = rmsUv * Math.Sqrt(2 / harmonics.Sum(amplitude => amplitude * amplitude));
        double rate = RateOf(host, place);
        return Edit(host, place, (_, at, _, samples) =>
        {
            for (int i = 0; i < samples.Length; i++)
            {
                double turns = phase + (hz * (at + i) / rate);
                for (int harmonic = 0; harmonic < harmonics.Length; harmonic++)
                {
                    samples[i] += scale * harmonics[harmonic] * RepeatableMath.SinCosTurns(turns * (harmonic + 1)).Sin;
                }
            }
        });
    }

    /// <summary>White noise, its amplitude stated for 20 to 450 Hz.</summary>
    public static PlantEdit White(PlantHost host, PlantPlace place, double rmsUv, ulong seed)
    {
        double deviation = rmsUv * Math.Sqrt(RateOf(host, place) / 2 / NoiseBand.StatedBandHz);
        Pcg32 random = NoiseStream.Of(seed, "noise");
        double[] noise = new double[LengthOf(host, place)];
        for (int i = 0; i < noise.Length; i++)
        {
            noise[i] = deviation * random.NextGaussian();
        }

        return Added(host, place, noise);
    }

    /// <summary>Sway of leads and skin.</summary>
    public static PlantEdit Sway(PlantHost host, PlantPlace place, double rmsUv, ulong seed)
    {
        double[] sway = new double[LengthOf(host, place)];
        ShapedNoise.Fill(NoiseStream.Of(seed, "motion"), NoiseBand.Motion, RateOf(host, place), sway);
        return Added(host, place, [.. sway.Select(value => rmsUv * value)]);
    }

    /// <summary>A baseline that runs away, and within the tail of the stretch comes back.</summary>
    public static PlantEdit Slope(PlantHost host, PlantPlace place, double uvPerMin, double tailS)
    {
        double rate = RateOf(host, place);
        double[] ramp = new double[LengthOf(host, place)];
        int tail = Math.Min(ramp.Length, (int)(tailS * rate));
        int top = ramp.Length - tail;
        for (int i = 0; i < ramp.Length; i++)
        {
            ramp[i] = uvPerMin / 60 / rate * (i < top ? i : top * (ramp.Length - i) / (double)tail);
        }

        return Added(host, place, ramp);
    }

    /// <summary>One spike of 2 ms in the middle half of the stretch, up or down.</summary>
    public static PlantEdit Spike(PlantHost host, PlantPlace place, double heightUv, ulong seed)
    {
        double[] spike = new double[LengthOf(host, place)];
        Pcg32 random = NoiseStream.Of(seed, "pop");
        int top = (int)((0.25 + (0.5 * random.NextDouble())) * spike.Length);
        ElectrodePops.AddSpike(spike, top, random.NextDouble() < 0.5 ? -heightUv : heightUv, RateOf(host, place));
        return Added(host, place, spike);
    }

    /// <summary>A stretch in the middle half of a trial during which the last value is held.</summary>
    public static PlantEdit Held(PlantHost host, PlantPlace place, double ms, ulong seed)
    {
        PlantEdit part = Part(host, place, ms, seed, null);
        Channel channel = host.Audited[place.Channel];
        double held = double.NaN;
        return part with
        {
            Change = (original, at, stored, samples) =>
            {
                // The value in front of the stretch, wherever a read begins.
                if (double.IsNaN(held))
                {
                    double[] one = new double[1];
                    original.Read(channel.Index, Math.Max(0, stored - (at - part.From) - 1), one);
                    held = one[0];
                }

                samples.Fill(held);
            },
        };
    }

    /// <summary>A stretch in the middle half of a trial that is not there.</summary>
    public static PlantEdit Lost(PlantHost host, PlantPlace place, double ms, ulong seed) => Part(host, place, ms, seed, null);

    /// <summary>All samples kept within a distance of the median.</summary>
    public static PlantEdit Clipped(PlantHost host, PlantPlace place, double distance)
    {
        double median = host.Of(place.Channel).Median;
        return Edit(host, place, (_, _, _, samples) =>
        {
            foreach (ref double sample in samples)
            {
                sample = Math.Clamp(sample, median - distance, median + distance);
            }
        });
    }

    /// <summary>A stretch of which a share of the amplitude is left, around its mean.</summary>
    public static PlantEdit Weakened(PlantHost host, PlantPlace place, double share)
    {
        double median = host.Of(place.Channel).Median;
        return Edit(host, place, (_, _, _, samples) =>
        {
            foreach (ref double sample in samples)
            {
                sample = median + (share * (sample - median));
            }
        });
    }

    /// <summary>Gel between two sites at one place or at two: each channel shows a part of the other's electrodes.</summary>
    /// <param name="host">The recording.</param>
    /// <param name="place">The pair and the stretch.</param>
    /// <param name="gelOverContact">Resistance of a joint over the impedance of a contact; all contacts alike.</param>
    /// <param name="joints">1 or 2.</param>
    /// <remarks>
    /// docs/detectability.md derives it: with k = 1/(2 + ratio), two joints give A = x - k(x - sy) and B = y - k(y - sx), s = 1 for first to first and second to second, -1 for crossed
    /// ones; one joint gives half of that where each site's potential lies evenly on its two electrodes.
    /// </remarks>
    public static IEnumerable<PlantEdit> Joined(PlantHost host, PlantPlace place, double gelOverContact, int joints)
    {
        double k = 1 / (2 + gelOverContact);
        (int one, int other) = (host.Audited[place.Channel].Index, host.Audited[place.Other!.Value].Index);
        (double levelOne, double levelOther) = (host.Of(place.Channel).Median, host.Of(place.Other.Value).Median);
        double part = joints == 2 ? k : k / 2;
        (double own, double others) = (-part, place.IsOpposite ? -part : part);
        yield return Mixed(host, place, place.Channel, (other, own, others, levelOne, levelOther));
        yield return Mixed(host, place, place.Other.Value, (one, own, others, levelOther, levelOne));
    }

    private static PlantEdit Mixed(PlantHost host, PlantPlace place, int channel, (int Other, double Own, double Others, double Level, double OtherLevel) mix) => Edit(
        host,
        place with { Channel = channel },
        (original, _, stored, samples) =>
        {
            double[] second = new double[samples.Length];
            original.Read(mix.Other, stored, second);
            for (int i = 0; i < samples.Length; i++)
            {
                samples[i] += (mix.Own * (samples[i] - mix.Level)) + (mix.Others * (second[i] - mix.OtherLevel));
            }
        });

    private static PlantEdit Part(PlantHost host, PlantPlace place, double ms, ulong seed, EditSamples? change)
    {
        PlantEdit whole = Edit(host, place, change);
        long length = Math.Max(1, (long)Math.Round(ms / 1000 * RateOf(host, place)));
        double at = 0.25 + (0.5 * NoiseStream.Of(seed, "place").NextDouble());
        long from = whole.From + (long)(at * Math.Max(0, whole.To - whole.From - length));
        return whole with { From = from, To = Math.Min(whole.To, from + length) };
    }

    private static PlantEdit Added(PlantHost host, PlantPlace place, double[] added)
    {
        PlantEdit whole = Edit(host, place, null);
        return whole with
        {
            Change = (_, at, _, samples) =>
            {
                for (int i = 0; i < samples.Length; i++)
                {
                    samples[i] += added[at - whole.From + i];
                }
            },
        };
    }

    private static PlantEdit Edit(PlantHost host, PlantPlace place, EditSamples? change)
    {
        Channel channel = host.Audited[place.Channel];
        long from = (long)Math.Floor(place.FromS * channel.Rate.Value);
        return new PlantEdit(channel.Index, from, from + LengthOf(host, place), change);
    }

    private static int LengthOf(PlantHost host, PlantPlace place) => (int)Math.Ceiling((place.ToS - place.FromS) * RateOf(host, place));

    private static double RateOf(PlantHost host, PlantPlace place) => host.Audited[place.Channel].Rate.Value;
}
