using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Decisions;
using ChannelAudit.Events;
using ChannelAudit.Impedance;
using ChannelAudit.Lists;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Bundles;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Setup;

namespace ChannelAudit.Fuzz;

/// <summary>Every reader of files that come from elsewhere, by name; each takes the path of a file.</summary>
internal static class Targets
{
    private const int MostSamples = 1 << 14;
    private const int MostLines = 8;

    /// <summary>All of them: the name of the file that a reader is given, and the reader.</summary>
    public static ImmutableDictionary<string, (string File, Action<string> Read)> All { get; } = new Dictionary<string, (string, Action<string>)>(StringComparer.Ordinal)
    {
        ["edf"] = ("input.edf", Recording),
        ["bdf"] = ("input.bdf", Recording),
        ["text"] = ("input.csv", Recording),
        ["events"] = ("input_events.tsv", path => EventsTable.Read(path)),
        ["channels"] = ("input_channels.tsv", path => BidsChannels.Read(path)),
        ["setup"] = ("setup.toml", path => SetupFile.Read(path)),
        ["criteria"] = ("criteria.toml", path => CriteriaFile.Read(path)),
        ["readings"] = ("readings.tsv", path => ImpedanceLog.Read(path, StudySetup.Empty)),
        ["ledger"] = (Decisions.Ledger.FileName, Chain),
        ["decisions"] = ("decisions.tsv", path => DecisionTable.Read(path, "R. Viewer")),
        ["exclusions"] = ("exclusions.tsv", path => ExclusionList.Read(path)),
        ["labels"] = ("labels.tsv", path => LabelList.Read(path)),
        ["bundle"] = ("bundle.zip", Bundle),
        ["audit"] = (PreviousAudit.FileName, path => StoredAuditReading.Open(Path.GetDirectoryName(path)!, withDecisions: false)),
        ["result"] = ("result.json", path => ResultReader.Read(File.ReadAllBytes(path), "result.json")),
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static void Recording(string path)
    {
        using Recording recording = RecordingOpener.Open(path, new ReadOptions(SamplingHz: 1000, TemporaryFolder: Path.GetDirectoryName(path)));
        double[] samples = new double[MostSamples];
        for (int channel = 0; channel < recording.Channels.Length; channel++)
        {
            foreach (Stretch stretch in recording.Channels[channel].Stretches.Take(4))
            {
                recording.Samples.Read(channel, stretch.StoredStart, samples.AsSpan(0, (int)Math.Min(stretch.Length, MostSamples)));
            }
        }
    }

    // Whoever writes a ledger of his own can give its lines any hash; no mutation hits one, so lines are read without it, too. The reader ends with the first that is wrong; not so here, hence few of them.
    private static void Chain(string path)
    {
        foreach (string line in File.ReadLines(path, Encoding.Latin1).Take(MostLines))
        {
            DecisionJson.Read(Encoding.Latin1.GetBytes(line));
        }

        Decisions.Ledger.Read(Path.GetDirectoryName(path)!);
    }

    private static void Bundle(string path)
    {
        using BundleFile bundle = BundleFile.Open(path);
        BundleReading.Of(bundle);
        foreach (string entry in bundle.Paths)
        {
            bundle.Bytes(entry);
        }
    }
}
