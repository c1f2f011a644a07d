using System.Collections.Immutable;
using ChannelAudit.Signals.Random;
using ChannelAudit.Trends;

namespace ChannelAudit.Core.Tests.Trends;

/// <summary>An archive of numbers, without any signal: two labs with two amplifiers each, three sites, six electrodes a site, recordings over some weeks.</summary>
/// <remarks>Levels of one recording share a part (the face, the day); those of a week may, too. What is to change is given as additions.</remarks>
internal sealed class MadeArchive
{
    public static ImmutableArray<string> Sites { get; } = ["cheek", "brow", "eye"];

    public required ulong Seed { get; init; }

    public int Recordings { get; init; } = 400;

    public int Weeks { get; init; } = 104;

    /// <summary>Correlation from week to week of a part that all recordings of a lab share.</summary>
    public double WeekCorrelation { get; init; }

    /// <summary>The spread of that part beside that of a recording.</summary>
    public double WeekSpread { get; init; }

    /// <summary>What is added to the logarithm of the resting level: lab, amplifier, site, electrode, week.</summary>
    public Func<string, string, string, string, int, double> Rest { get; init; } = (_, _, _, _, _) => 0;

    /// <summary>The same for the mains.</summary>
    public Func<string, string, string, string, int, double> Mains { get; init; } = (_, _, _, _, _) => 0;

    /// <summary>What is added to the chance that a channel does not pass.</summary>
    public Func<string, int, double> NotPassed { get; init; } = (_, _) => 0;

    public ImmutableArray<TrendSession> Make()
    {
        Pcg32 random = new(Seed, 77);
        Dictionary<string, double[]> shared = new(StringComparer.Ordinal) { ["north"] = Course(random), ["south"] = Course(random) };
        return [.. Enumerable.Range(0, Recordings).Select(i => Session(i, random, shared))];
    }

    private double[] Course(Pcg32 random)
    {
        double[] course = new double[Weeks];
        double before = random.NextGaussian();
        for (int i = 0; i < Weeks; i++)
        {
            before = course[i] = (WeekCorrelation * before) + (Math.Sqrt(1 - (WeekCorrelation * WeekCorrelation)) * random.NextGaussian());
        }

        return course;
    }

    private TrendSession Session(int i, Pcg32 random, Dictionary<string, double[]> shared)
    {
        string lab = random.NextDouble() < 0.5 ? "north" : "south";
        string amplifier = random.NextDouble() < 0.5 ? "A" : "B";
        int day = (int)(random.NextDouble() * 7 * Weeks);
        double face = (0.2 * random.NextGaussian()) + (WeekSpread * shared[lab][day / 7]);
        return new TrendSession
        {
            Id = i.ToString("D5", System.Globalization.CultureInfo.InvariantCulture),
            Day = new DateOnly(2023, 1, 2).AddDays(day),
            Lab = lab,
            Amplifier = amplifier,
            Channels = [.. Sites.Select(site => Channel(site, lab, amplifier, day / 7, face, random))],
        };
    }

    private TrendChannel Channel(string site, string lab, string amplifier, int week, double face, Pcg32 random)
    {
        int first = (int)(random.NextDouble() * 6);
        int second = (first + 1 + (int)(random.NextDouble() * 5)) % 6;
        ImmutableArray<string> electrodes = [.. new[] { first, second }.Select(number => $"{char.ToUpperInvariant(site[0])}{(char)('1' + number)}")];
        double rest = electrodes.Sum(electrode => Rest(lab, amplifier, site, electrode, week));
        double mains = electrodes.Sum(electrode => Mains(lab, amplifier, site, electrode, week)) / 2;
        return new TrendChannel
        {
            Site = site,
            Electrodes = electrodes,
            IsNotPassed = random.NextDouble() < 0.08 + NotPassed(lab, week),
            RestUv = Math.Exp(0.4 + face + rest + (0.15 * random.NextGaussian())),
            MainsUv = Math.Exp(-1 + face + mains + (0.4 * random.NextGaussian())),
            IsBridged = random.NextDouble() < 0.02,
            PairKohm = 10 * Math.Exp(0.3 * random.NextGaussian()),
            FirstKohm = 5 * Math.Exp(0.3 * random.NextGaussian()),
            SecondKohm = 5 * Math.Exp(0.3 * random.NextGaussian()),
            FallPercent = 20 + (8 * random.NextGaussian()),
        };
    }
}
