using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Setup;

namespace ChannelAudit.Reports.Tests;

/// <summary>Readings of an invented session: a contact that came loose at the cheek, gel between cheek and eye, a brow that was not read.</summary>
internal static class SampleReadings
{
    public static ImpedanceReport Report(string cheek = "cheek", string? before = "before") => ImpedanceReport.Of(Log(cheek, before), Setup(cheek));

    public static ImpedanceLog Log(string cheek = "cheek", string? before = "before") => new()
    {
        FileName = "K07.tsv",
        Sha256 = new string('7', 64),
        Readings =
        [
            .. Site(2, cheek, (4.2, 3.9, 3.7), Clock(10, 5), before), .. Site(5, "eye", (4.5, 4.1, 3.8), Clock(10, 5), before),
            .. Site(8, cheek, (35.8, 35.5, 3.3), Clock(10, 25), "during"), .. Site(11, "eye", (12, 11.6, 3.4), Clock(10, 26), "during"),
            new LoggedReading(14, new(cheek, IsSecond: true), new("eye", IsSecond: true), 0.4, Clock(10, 27), "during"),
        ],
    };

    private static StudySetup Setup(string cheek) => new()
    {
        Sites =
        [
            new SiteSetup { Name = cheek, Channel = "EMG cheek", Adjacent = ["eye"] }, new SiteSetup { Name = "brow", Channel = "EMG brow", Adjacent = ["eye"] },
            new SiteSetup { Name = "eye", Channel = "EMG eye" },
        ],
    };

    private static ImmutableArray<LoggedReading> Site(int line, string name, (double Ab, double AGround, double BGround) kohm, ReadingTime time, string? phase)
    {
        SiteElectrode a = new(name, IsSecond: false);
        SiteElectrode b = new(name, IsSecond: true);
        return
        [
            new(line, a, b, kohm.Ab, time, phase), new(line + 1, a, SiteElectrode.Ground, kohm.AGround, time, phase),
            new(line + 2, b, SiteElectrode.Ground, kohm.BGround, time, phase),
        ];
    }

    private static ReadingTime Clock(int hour, int minute) => new(new DateTime(2026, 3, 12, hour, minute, 0, DateTimeKind.Unspecified), HasDate: true);
}
