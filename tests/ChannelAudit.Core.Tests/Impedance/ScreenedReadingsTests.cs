using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>Readings beside a recording: graded apart, whatever they say.</summary>
public sealed class ScreenedReadingsTests
{
    private static readonly SessionPlan Plan = new()
    {
        Seed = 7,
        DurationS = 12,
        Sites = [new SitePlan { Name = "cheek", Label = "EMG 1", FirstKohm = 5, SecondKohm = 5 }, new SitePlan { Name = "eye", Label = "EMG 2", FirstKohm = 5, SecondKohm = 5 }],
    };

    private static readonly StudySetup Sites =
        SetupFile.Parse("[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\n[[sites]]\nname = \"eye\"\nchannel = \"EMG 2\"\n", "setup.toml");

    [Theory]
    [InlineData(0.3)]
    [InlineData(3)]
    [InlineData(300)]
    public void NoReadingChangesAVerdict(double kohm)
    {
        string table = FormattableString.Invariant($"site\tpair\tkohm\ncheek\ta-b\t{kohm}\ncheek\ta-ground\t4\ncheek\tb-ground\t4\n");

        RecordingResult with = Audited(Sites, table);
        RecordingResult without = Audited(Sites, null);

        Assert.NotNull(with.Impedance);
        Assert.Null(without.Impedance);
        Assert.Equal(Told(without), Told(with), StringComparer.Ordinal);
    }

    [Fact]
    public void AReadingIsFoundUnderTheNameOfItsSite()
    {
        RecordingResult result = Audited(Sites, "site\tpair\tkohm\ncheek\ta-b\t30\n");

        Assert.Equal([ImpedanceGrade.Redo, null], result.Channels.Select(channel => result.Impedance!.Site(channel.Name)!.Grade));
    }

    [Fact]
    public void ReadingsOfOtherRecordingsAreNotAvailable()
    {
        RecordingResult result = Audited(Sites, "recording\tsite\tpair\tkohm\nanother\tcheek\ta-b\t3\n");

        Assert.All(result.Impedance!.Sites, site => Assert.Null(site.Grade));
    }

    [Fact]
    public void WithoutASetupASiteIsAChannelsLabel()
    {
        RecordingResult result = Audited(StudySetup.Empty, "site\tpair\tkohm\nEMG 2\ta-b\t30\n");

        Assert.Equal(ImpedanceGrade.Redo, result.Impedance!.Site("EMG 2")!.Grade);
        Faults.AreExactly(
            "r.tsv, line 3: site 'eye' is no channel of session",
            "give --setup, which says what channel a site is, or write the channel's label; channels there: EMG 1, EMG 2",
            () => Audited(StudySetup.Empty, "site\tpair\tkohm\nEMG 2\ta-b\t3\neye\ta-b\t3\ncheek\ta-b\t3\n"));
    }

    private static RecordingResult Audited(StudySetup setup, string? table)
    {
        using TemporaryFolder folder = new();
        string path = folder.In("session.edf");
        EdfFiles.Write(MadeRecording.Make(Plan), path);
        return RecordingAudit.Of(
            new RecordingEntry("session", path, "session.edf"), setup, DefaultCriteria.All, null, CancellationToken.None, impedance: table is null ? null : Readings.Read(table, setup));
    }

    private static ImmutableArray<string> Told(RecordingResult result) =>
    [
        .. result.Channels.Select(channel => $"{channel.Name} {channel.Verdict} {string.Join(' ', channel.Reasons)}"),
        .. result.Channels.SelectMany(channel => channel.Cells.Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {string.Join(' ', cell.Reasons)}"))),
        .. result.Channels.SelectMany(channel => channel.Measures.Select(measure => FormattableString.Invariant($"{channel.Name} {measure.Value.Measure} {measure.Value.Value} {measure.Grade}"))),
    ];
}
