using ChannelAudit.Recordings;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.Study;

/// <summary>One invented participant on one invented amplifier: everything that differs between recordings and is no fault.</summary>
/// <remarks>
/// The ranges are common practice for facial EMG with careful preparation, from memory: a resting muscle of 0.8 to 2.5 µV, asked contractions of
/// 15 to 60 µV, electrode noise of 0.3 to 0.7 µV, 50 or 60 Hz, coupled to DC or from 10 Hz on.
/// </remarks>
public sealed record Subject
{
    private static readonly int[] RatesHz = [1000, 2000, 2048];

    /// <summary>Decides everything else.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Samples per second.</summary>
    public required int RateHz { get; init; }

    /// <summary>Mains frequency, some hundredths of a hertz off its name.</summary>
    public required double MainsHz { get; init; }

    /// <summary>The amplifier.</summary>
    public required AmplifierPlan Amplifier { get; init; }

    /// <summary>µV rms of each muscle at rest.</summary>
    public required double RestUv { get; init; }

    /// <summary>µV rms of an asked contraction.</summary>
    public required double ContractionUv { get; init; }

    /// <summary>µV rms of each electrode's own noise.</summary>
    public required double ElectrodeNoiseUv { get; init; }

    /// <summary>Asymmetry of the sources under a pair.</summary>
    public required double Asymmetry { get; init; }

    /// <summary>Crosstalk between cheek and eye, each way.</summary>
    public required double Crosstalk { get; init; }

    /// <summary>Mains that every room leaves, µV rms.</summary>
    public required double RoomMainsUv { get; init; }

    /// <summary>Answers in scored trials, as a multiple of rest.</summary>
    public required double Answer { get; init; }

    /// <summary>Draws a participant.</summary>
    /// <param name="seed">The seed.</param>
    public static Subject Draw(ulong seed)
    {
        Pcg32 random = new(seed, 77);
        bool isCoupledToDc = random.NextDouble() < 0.5;
        return new Subject
        {
            Seed = seed,
            RateHz = RatesHz[(int)(random.NextDouble() * RatesHz.Length)],
            MainsHz = (random.NextDouble() < 0.5 ? 50 : 60) + Between(random, -0.04, 0.04),
            Amplifier = new AmplifierPlan
            {
                NoiseUv = Between(random, 0.3, 0.6),
                HighpassHz = isCoupledToDc ? 0 : 10,
                LowpassHz = isCoupledToDc ? null : 450,
                StepUv = 0.1,
            },
            RestUv = Between(random, 0.8, 2.5),
            ContractionUv = Between(random, 15, 60),
            ElectrodeNoiseUv = Between(random, 0.3, 0.7),
            Asymmetry = Between(random, 0, 0.3),
            Crosstalk = Between(random, 0, 0.15),
            RoomMainsUv = Between(random, 0, 0.3),
            Answer = Between(random, 1, 6),
        };
    }

    /// <summary>The three sites of this face.</summary>
    public IEnumerable<SitePlan> Sites() => SitePlan.Face.Select(site => site with
    {
        RestUv = RestUv,
        ElectrodeNoiseUv = ElectrodeNoiseUv,
        Asymmetry = Asymmetry,
    });

    /// <summary>The rate as a fraction.</summary>
    public Rational Rate => new(RateHz, 1);

    private static double Between(Pcg32 random, double from, double to) => from + ((to - from) * random.NextDouble());
}
