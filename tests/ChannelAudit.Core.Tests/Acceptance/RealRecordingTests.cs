using ChannelAudit.Core.Tests.Recordings.Edf;
using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Recordings that nobody here made; what they hold is told by the README beside them.</summary>
public sealed class RealRecordingTests
{
    private static readonly string[] Refused =
    [
        "edf/EDF.jl-tests/evt.bdf",
        "edf/StagPoint-tests/Invalid_DataRecord_Count.edf",
        "edf/StagPoint-tests/PulseOximetry1.EDF",
        "edf/edfio-tests/SC4001EC-Hypnogram.bdf",
        "edf/edfio-tests/SC4001EC-Hypnogram.edf",
        "edf/wfdb-tests/test_edfann.edf",
    ];

    [SkippableTheory]
    [InlineData("edf", 19)]
    [InlineData("bids", 8)]
    public void EveryRecordingIsAuditedOrRefusedWithAReason(string folder, int count)
    {
        string root = RealFile.Path(string.Empty);
        string[] files =
        [
            .. Directory.EnumerateFiles(Path.Combine(root, folder), "*", SearchOption.AllDirectories)
                .Where(path => path.EndsWith(".edf", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".bdf", StringComparison.OrdinalIgnoreCase))
                .Select(path => Path.GetRelativePath(root, path))
                .Order(StringComparer.Ordinal),
        ];

        string[] refused = [.. files.Where(file => RefusalOf(Path.Combine(root, file)) is not null)];

        Assert.Equal(count, files.Length);
        Assert.Equal(Refused.Where(file => file.StartsWith(folder, StringComparison.Ordinal)), refused, StringComparer.Ordinal);
    }

    [SkippableFact]
    public void OnlyHeldRailsOfRealChinRecordingsAreClipping()
    {
        string root = RealFile.Path("chin");
        string[] clipped =
        [
            .. Directory.EnumerateFiles(root, "*.csv", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .SelectMany(path => AuditCodes(path).Channels
                    .Where(channel => channel.Cells.Any(cell => cell.Reasons.Contains("clipping", StringComparer.Ordinal)))
                    .Select(channel => Path.GetFileName(path)[..9] + " " + channel.Label)),
        ];

        // NOISE_014 and NOISE_049 by the README; the other two by eye: held at 4095 and 0. Scaled files that touch 0 and 1 are not among them.
        Assert.Equal(["NOISE_014 CH2", "NOISE_049 CH2", "NOISE_006 CH1", "NOISE_022 CH2"], clipped);
    }

    [SkippableTheory]
    [InlineData("NOISE_014", 58, 115)]
    [InlineData("NOISE_049", 40, 40)]
    public void TheHoldAtTheRailIsMeasured(string name, int least, int most)
    {
        RecordingResult result = AuditCodes(Directory.EnumerateFiles(RealFile.Path("chin/rails"), name + "*").Single());

        double runMs = result.Channels[1].Cells[0].Measures.Single(one => string.Equals(one.Value.Measure, "clipped_run", StringComparison.Ordinal)).Value.Value!.Value;
        Assert.InRange(runMs * 250 / 1000, least - 1e-6, most + 1e-6);
        Assert.Equal(Grade.Reject, result.Channels[1].Verdict);
        Assert.Equal(Grade.Pass, result.Channels[0].Cells[0].Verdict);
    }

    private static string? RefusalOf(string path)
    {
        try
        {
            _ = Audit(path, StudySetup.Empty);
            return null;
        }
        catch (ChannelAuditException refusal)
        {
            Assert.Equal(FaultKind.Recording, refusal.Kind);
            Assert.Contains(Path.GetFileName(path), refusal.Message, StringComparison.Ordinal);
            Assert.NotEmpty(refusal.Hint);
            return refusal.Message;
        }
    }

    private static RecordingResult AuditCodes(string path) =>
        Audit(path, SetupFile.Parse("[recording]\nunit = \"none\"\nsampling_hz = 250.0\n", "setup.toml"));

    private static RecordingResult Audit(string path, StudySetup setup) => RecordingAudit.Of(
        new RecordingEntry("real", path, Path.GetFileName(path)), setup, DefaultCriteria.All, null, CancellationToken.None);
}
