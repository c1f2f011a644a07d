using ChannelAudit.Impedance;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>Tables of readings by way of a file, as a technician gives them.</summary>
internal static class Readings
{
    public const string Header = "site\tpair\tkohm\ttime\tphase\n";

    /// <summary>Three sites, cheek and eye neighbours; the electrodes of the cheek have ids.</summary>
    public static StudySetup Face { get; } = SetupFile.Parse(
        """
        [[sites]]
        name = "cheek"
        channel = "EMG cheek"
        electrodes = ["C-1", "C-2"]
        adjacent = ["eye"]
        [[sites]]
        name = "brow"
        channel = "EMG brow"
        [[sites]]
        name = "eye"
        channel = "EMG eye"
        """,
        "setup.toml");

    public static ImpedanceLog Read(string text, StudySetup? setup = null)
    {
        using TemporaryFolder folder = new();
        return ImpedanceLog.Read(folder.Write("r.tsv", text), setup ?? StudySetup.Empty);
    }

    public static ImpedanceReport Report(string text, StudySetup? setup = null) => ImpedanceReport.Of(Read(text, setup), setup ?? StudySetup.Empty);

    /// <summary>The three pairs of one site, without time and phase.</summary>
    public static ImpedanceReport Of(double ab, double aGround, double bGround) =>
        Report(FormattableString.Invariant($"site\tpair\tkohm\ncheek\ta-b\t{ab}\ncheek\ta-ground\t{aGround}\ncheek\tb-ground\t{bGround}\n"));

    public static string[] Codes(ImpedanceReport report) => [.. report.Warnings.Select(warning => ImpedanceCodes.Of(warning.Code))];
}
