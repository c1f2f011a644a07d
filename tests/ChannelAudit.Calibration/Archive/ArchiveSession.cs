using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Signals.Random;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;

namespace ChannelAudit.Calibration.Archive;

/// <summary>One short recording of the invented archive "two labs": ten seconds of rest at three sites, and the readings before it.</summary>
/// <remarks>
/// Three things happen, and nothing else: electrode C2 of lab north ages from September 2024 on; mains comes into lab north from mid-November 2024 to the end of February 2025; lab south prepares
/// better and better from June 2023 to June 2024. All else is drawn anew for each recording: electrodes, amplifier, level of the muscle, noise, a bad contact now and then, gel that joins two sites.
/// </remarks>
internal sealed class ArchiveSession
{
    private const decimal DurationS = 10m;
    private const int PoolSize = 6;

    private static readonly DateOnly First = new(2023, 1, 2);
    private static readonly DateOnly Last = new(2025, 12, 28);
    private static readonly DateOnly Ageing = new(2024, 9, 1);
    private static readonly (DateOnly From, DateOnly To) Season = (new(2024, 11, 15), new(2025, 3, 1));
    private static readonly (DateOnly From, DateOnly To) Learning = (new(2023, 6, 1), new(2024, 6, 1));

    private readonly Pcg32 _random;

    /// <summary>Draws a recording.</summary>
    /// <param name="seed">Seed of the archive.</param>
    /// <param name="number">Its place, from 0.</param>
    /// <param name="of">How many there are; they are spread over three years.</param>
    public ArchiveSession(ulong seed, int number, int of)
    {
        _random = new Pcg32(seed, (ulong)number + 1);
        int days = Last.DayNumber - First.DayNumber;
        Day = First.AddDays((int)((number + _random.NextDouble()) * days / of));
        Lab = _random.NextDouble() < 0.5 ? "north" : "south";
        string amplifier = _random.NextDouble() < 0.5 ? "A" : "B";
        string technician = $"T{(1 + (int)(4 * _random.NextDouble())).ToString(CultureInfo.InvariantCulture)}";
        double face = Math.Exp(0.15 * _random.NextGaussian());
        ImmutableArray<(SitePlan Plan, int First, int Second)> sites = [.. SitePlan.Face.Select(site => Site(site, face))];
        string worn = string.Join('_', sites.Select(site => string.Create(CultureInfo.InvariantCulture, $"{site.Plan.Name[0]}{site.First}{site.Second}")));
        Name = string.Create(CultureInfo.InvariantCulture, $"{Lab}/{Day:yyyyMMdd}_{worn}_{amplifier}_{technician}_{number:D5}");
        Plan = new SessionPlan
        {
            Seed = (seed * 1_000_003) + (ulong)number,
            DurationS = DurationS,
            Rate = new Rational(1000, 1),
            Sites = [.. sites.Select(site => site.Plan)],
            Trials = [new PlannedTrial { OnsetS = 0, DurationS = DurationS, Label = "rest", Role = TrialRole.Rest }],
            Amplifier = new AmplifierPlan { StepUv = 0.2 },
            Faults = Faults(),
        };
        Readings = [.. sites.SelectMany(site => ReadingsOf(site.Plan))];
    }

    /// <summary>The pairs of electrodes that a site can have, by their numbers.</summary>
    public static ImmutableArray<(int First, int Second)> Pairs { get; } =
        [.. Enumerable.Range(1, PoolSize).SelectMany(first => Enumerable.Range(first + 1, PoolSize - first).Select(second => (first, second)))];

    /// <summary>The day.</summary>
    public DateOnly Day { get; }

    /// <summary>The lab.</summary>
    public string Lab { get; }

    /// <summary>The path below the archive, without extension: lab, day, electrodes by site, amplifier, technician, number.</summary>
    public string Name { get; }

    /// <summary>The recording.</summary>
    public SessionPlan Plan { get; }

    /// <summary>Lines of the table of readings, without the recording.</summary>
    public ImmutableArray<string> Readings { get; }

    private double Learned => Lab is "south" ? Passed(Learning.From, Learning.To) : 1;

    private double Passed(DateOnly from, DateOnly to) => Math.Clamp((double)(Day.DayNumber - from.DayNumber) / (to.DayNumber - from.DayNumber), 0, 1);

    private (SitePlan Plan, int First, int Second) Site(SitePlan site, double face)
    {
        (int first, int second) = Pairs[(int)(Pairs.Length * _random.NextDouble())];
        double age = Lab is "north" && site.Name is "cheek" && (first == 2 || second == 2) ? Passed(Ageing, Last) : 0;
        double preparation = 1 + (1.5 * (1 - Learned));
        double[] noise = [.. Enumerable.Range(0, 2).Select(_ => 0.5 * Math.Exp(0.2 * _random.NextGaussian()) * (1 + (0.4 * (preparation - 1))))];
        double[] kohm = [.. Enumerable.Range(0, 2).Select(_ => 5 * Math.Exp(0.25 * _random.NextGaussian()) * preparation)];
        int old = first == 2 ? 0 : 1;
        noise[old] *= 1 + (4 * age);
        kohm[old] *= 1 + age;
        SitePlan plan = site with
        {
            RestUv = 1.2 * face * Math.Exp(0.1 * _random.NextGaussian()),
            ElectrodeNoiseUv = Math.Sqrt(((noise[0] * noise[0]) + (noise[1] * noise[1])) / 2),
            FirstKohm = kohm[0],
            SecondKohm = kohm[1],
        };
        return (plan, first, second);
    }

    private ImmutableArray<Fault> Faults()
    {
        bool isSeason = Lab is "north" && Day >= Season.From && Day < Season.To;
        ImmutableArray<Fault>.Builder faults = ImmutableArray.CreateBuilder<Fault>();
        foreach (SitePlan site in SitePlan.Face)
        {
            faults.Add(new MainsPickup([site.Name], (isSeason ? 2.5 : 0.4) * Math.Exp(0.3 * _random.NextGaussian())));
            if (_random.NextDouble() < 0.04 + (0.3 * (1 - Learned)))
            {
                faults.Add(new BroadbandNoise([site.Name], 6));
            }
        }

        if (_random.NextDouble() < 0.015)
        {
            faults.Add(ElectrodeBridge.TwoNodes("cheek", "eye", 0.3));
        }

        return faults.ToImmutable();
    }

    private IEnumerable<string> ReadingsOf(SitePlan site)
    {
        double a = site.FirstKohm!.Value;
        double b = site.SecondKohm!.Value;
        const double ground = 5;
        double early = (a + b) * 1.25 * Math.Exp(0.05 * _random.NextGaussian());
        foreach ((string pair, double kohm, string time) in new[] { ("a-b", early, "10:00"), ("a-b", a + b, "10:06"), ("a-ground", a + ground, "10:06"), ("b-ground", b + ground, "10:06") })
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{site.Name}\t{pair}\t{kohm:F1}\t{Day:yyyy-MM-dd}T{time}\tbefore");
        }
    }
}
