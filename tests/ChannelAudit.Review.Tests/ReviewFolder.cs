using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;

namespace ChannelAudit.Review.Tests;

/// <summary>A study and its audit in a folder of their own: two recordings, three sites, mains in one and a drift in the other; labels and a name that try to be markup.</summary>
internal sealed class ReviewFolder : IDisposable
{
    /// <summary>A condition, which must be nowhere in a blind review.</summary>
    public const string Condition = "harbourlike";

    /// <summary>Another condition, that wants to be markup.</summary>
    public const string Markup = "<img src=x onerror=alert(1)>\"'&";

    /// <summary>Begins every word in the headers that may tell something about a person; must be nowhere at all.</summary>
    public const string Person = "ZQWHO";

    private static readonly Lazy<(ImmutableArray<(string Path, byte[] Bytes)> Files, ImmutableArray<RecordingResult> Results)> Made = new(Make);

    private readonly TemporaryFolder _folder = new();

    public ReviewFolder()
    {
        foreach ((string path, byte[] bytes) in Made.Value.Files)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_folder.In("study/" + path))!);
            File.WriteAllBytes(_folder.In("study/" + path), bytes);
        }

        AuditWriter.Write(
            new AuditRun { Version = "0.1.0", Criteria = DefaultCriteria.All, Setup = StudySetup.Empty },
            [.. Made.Value.Results.OrderBy(result => result.Id, StringComparer.Ordinal)],
            Audit,
            figures: null,
            CancellationToken.None);
    }

    /// <summary>The folder of the audit.</summary>
    public string Audit => _folder.In("audit");

    /// <summary>The folder of the recordings.</summary>
    public string Data => _folder.In("study");

    /// <summary>The paths of the recordings.</summary>
    public static ImmutableArray<string> Paths { get; } = ["grimsby/P01.edf", "grimsby/<b>P02.edf"];

    /// <summary>A review by a person.</summary>
    public ReviewOptions By(string name) => new() { Folder = Audit, DataRoot = Data, By = name };

    /// <summary>A blind review by a person.</summary>
    public ReviewOptions BlindBy(string name, uint? seed = 7) => By(name) with { IsBlind = true, Seed = seed };

    /// <summary>Puts a picture of each channel of a recording into the audit, as <c>screen --figures all</c> does.</summary>
    public void PutSheets(string recording)
    {
        RecordingResult result = Made.Value.Results.Single(one => string.Equals(one.Id, recording, StringComparison.Ordinal));
        foreach (ChannelResult channel in result.Channels)
        {
            string path = Path.Combine(Audit, AuditWriter.Place(result.Id, FigureFile.SheetOf(result, channel)));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, [0x89, 0x50, 0x4E, 0x47]);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _folder.Dispose();

    private static (ImmutableArray<(string Path, byte[] Bytes)> Files, ImmutableArray<RecordingResult> Results) Make()
    {
        using TemporaryFolder folder = new();
        ImmutableArray<Fault>[] faults = [[new MainsPickup(["cheek"], 30) { Span = new FaultSpan(10, 18) }], [new Drift("brow", 900)]];
        var files = ImmutableArray.CreateBuilder<(string Path, byte[] Bytes)>();
        var results = ImmutableArray.CreateBuilder<RecordingResult>();
        for (int i = 0; i < Paths.Length; i++)
        {
            string path = folder.In(Paths[i]);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            EdfFiles.Write(MadeRecording.Make(Plan((ulong)(i + 1), faults[i])), path);
            PlantPerson(path);
            files.Add((Paths[i], File.ReadAllBytes(path)));
            results.Add(RecordingAudit.Of(new RecordingEntry(RecordingId.Of(Paths[i]), path, Paths[i]), StudySetup.Empty, DefaultCriteria.All, null, CancellationToken.None));
        }

        return (files.ToImmutable(), results.ToImmutable());
    }

    // Patient and recording, reserved bytes, transducers (Kemp et al. 1992; Kemp & Olivan 2003).
    private static void PlantPerson(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int signals = int.Parse(Encoding.ASCII.GetString(bytes, 252, 4), CultureInfo.InvariantCulture);
        Encoding.ASCII.GetBytes($"{Person}1 F 02-MAY-1951 {Person}2".PadRight(80) + $"Startdate 02-MAR-2026 {Person}3 {Person}4 {Person}5".PadRight(80)).CopyTo(bytes, 8);
        Encoding.ASCII.GetBytes(Person + "6").CopyTo(bytes, 192 + 8);
        for (int signal = 0; signal < signals; signal++)
        {
            Encoding.ASCII.GetBytes(Person + "7").CopyTo(bytes, 256 + (signals * 16) + (signal * 80));
            Encoding.ASCII.GetBytes(Person + "8").CopyTo(bytes, 256 + (signals * 224) + (signal * 32));
        }

        File.WriteAllBytes(path, bytes);
    }

    private static SessionPlan Plan(ulong seed, ImmutableArray<Fault> faults) => new()
    {
        Seed = seed,
        DurationS = 40,
        Rate = new(1000, 1),
        Trials =
        [
            .. Enumerable.Range(0, 9).Select(i => new PlannedTrial
            {
                OnsetS = 2 + (4 * i), DurationS = 3, Label = i % 2 == 0 ? Condition : Markup, Role = TrialRole.Scored, Activity = [new SiteActivity("cheek", 8)],
            }),
        ],
        Faults = faults,
    };
}
