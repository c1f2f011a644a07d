using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>Everything that decides a made recording: the same plan gives the same bits on every machine.</summary>
public sealed record SessionPlan
{
    /// <summary>Decides every random number; each noise has a stream of its own, so that a fault more or less changes nothing else.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Length of the recording in seconds.</summary>
    public required decimal DurationS { get; init; }

    /// <summary>Samples per second of every channel.</summary>
    public Rational Rate { get; init; } = new(2000, 1);

    /// <summary>The sites in the order of the channels.</summary>
    public ImmutableArray<SitePlan> Sites { get; init; } = SitePlan.Face;

    /// <summary>Impedance of the ground electrode in kΩ.</summary>
    public double GroundKohm { get; init; } = 5;

    /// <summary>Noise of the ground electrode in µV rms in the band of 20 to 450 Hz; seen only where gel joins a site to the ground.</summary>
    public double GroundNoiseUv { get; init; } = 0.5;

    /// <summary>The trials in order of onset; one that ends behind the recording is allowed.</summary>
    public ImmutableArray<PlannedTrial> Trials { get; init; } = [];

    /// <summary>The amplifier and its converter.</summary>
    public AmplifierPlan Amplifier { get; init; } = new();

    /// <summary>The faults, applied in this order within each step of the signal's way.</summary>
    public ImmutableArray<Fault> Faults { get; init; } = [];

    /// <summary>Samples on the time axis of every channel.</summary>
    public int Length => checked((int)Rate.IndexAt(DurationS));

    /// <summary>The position of a site.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="ArgumentException">When the plan has no such site.</exception>
    public int SiteIndex(string name)
    {
        for (int i = 0; i < Sites.Length; i++)
        {
            if (string.Equals(Sites[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new ArgumentException($"The plan has no site '{name}'.", nameof(name));
    }

    /// <summary>The samples of a stretch, cut to the recording.</summary>
    /// <param name="stretch">Seconds from the first sample.</param>
    public SampleSpan SamplesOf(FaultSpan stretch)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        int from = (int)Math.Clamp(Rate.IndexAt(stretch.FromS), 0, Length);
        int to = stretch.ToS is { } end ? (int)Math.Clamp(Rate.IndexAt(end), from, Length) : Length;
        return new SampleSpan(from, to);
    }

    /// <summary>The numbers, from 1, of the trials that a stretch meets, those that run past the end included.</summary>
    /// <param name="stretch">Seconds from the first sample.</param>
    public ImmutableArray<int> TrialsIn(FaultSpan stretch)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        decimal to = stretch.ToS ?? decimal.MaxValue;
        return
        [
            .. Enumerable.Range(0, Trials.Length)
                .Where(i => Trials[i].OnsetS < to && Trials[i].EndS > stretch.FromS)
                .Select(i => i + 1),
        ];
    }
}
