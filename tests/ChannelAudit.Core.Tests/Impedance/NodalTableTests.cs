using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Impedance;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;
using SynthesisReading = ChannelAudit.Synthesis.ImpedanceReading;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>
/// The whole way: gel between made electrodes, what a meter shows, the table that a technician writes, what the report makes of it. Values:
/// nodal table of methods 1.13, printed before this was written; every contact is 5 kΩ.
/// </summary>
public sealed class NodalTableTests
{
    private const double ToleranceKohm = 0.01;

    public static TheoryData<string, double[], double[], double, double, string> Rows { get; } = new()
    {
        { "none", [10, 10, 10], [5, 5, 5], 5, 10, "" },
        { "pair 0.5", [0.48, 7.62, 7.62], [0.24, 0.24, 7.38], 5, 7.62, "pair-joined" },
        { "pair 5", [3.33, 8.33, 8.33], [1.67, 1.67, 6.67], 5, 8.33, "ground-differs" },
        { "sites 0.5", [7.62, 10, 7.62], [5, 2.62, 5], 5, 0.48, "sites-joined" },
        { "ground 0.5", [7.62, 7.62, 0.48], [7.38, 0.24, 0.24], 2.62, 7.62, "ground-joined" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void EachRowIsFoundFromItsReadings(string gel, double[] readings, double[] solved, double otherGround, double across, string warning)
    {
        ImpedanceReport report = Readings.Report(Table(gel));
        SiteImpedance cheek = report.Site("cheek")!;

        Near(readings, cheek.Pairs.Select(pair => pair.Kohm!.Value));
        Near(solved, [cheek.Solved!.Value.AKohm, cheek.Solved.Value.BKohm, cheek.Solved.Value.GroundKohm]);
        Near([otherGround, across], [report.Site("eye")!.Solved!.Value.GroundKohm, Assert.Single(report.Across).Reading.Kohm]);
        Assert.Equal(warning, string.Join(' ', Readings.Codes(report)));
    }

    private static string Table(string gel)
    {
        SessionPlan plan = new()
        {
            Seed = 1,
            DurationS = 1,
            Sites = [Site("cheek"), Site("eye")],
            Faults = Gel(gel) is { } fault ? [fault] : [],
        };
        ImmutableArray<SynthesisReading> shown =
        [
            .. ImpedanceMeter.StandardReadings(plan), ImpedanceMeter.Across(plan, Electrode.Second("cheek"), Electrode.First("eye")),
        ];
        return "site\tpair\tkohm\n"
            + string.Concat(shown.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Site}\t{one.Pair}\t{one.Kohm:0.000}\n")));
    }

    private static ElectrodeBridge? Gel(string where) => where switch
    {
        "pair 0.5" => ElectrodeBridge.WithinPair("cheek", 0.5),
        "pair 5" => ElectrodeBridge.WithinPair("cheek", 5),
        "sites 0.5" => ElectrodeBridge.OneNode("cheek", "eye", 0.5),
        "ground 0.5" => ElectrodeBridge.ToGround(Electrode.Second("cheek"), 0.5),
        _ => null,
    };

    private static SitePlan Site(string name) => new() { Name = name, Label = name, FirstKohm = 5, SecondKohm = 5 };

    private static void Near(double[] expected, IEnumerable<double> found)
    {
        double[] all = [.. found];
        Assert.Equal(expected.Length, all.Length);
        foreach ((double want, double got) in expected.Zip(all))
        {
            Assert.InRange(got, want - ToleranceKohm, want + ToleranceKohm);
        }
    }
}
