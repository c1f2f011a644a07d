using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis.Demo;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Tests.Synthesis.Demo;

/// <summary>The demo's folder, written once, and the audit of its recordings from disk.</summary>
public sealed class WrittenDemo : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public WrittenDemo()
    {
        DemoFolder.Write(folder.Folder);
        Setup = SetupFile.Read(folder.In("study/setup.toml"));
        Results = [.. RecordingList.Find([folder.In("study")], []).Select(Audited)];
    }

    /// <summary>What was where.</summary>
    public StudySetup Setup { get; }

    /// <summary>One result a recording, by id.</summary>
    public ImmutableArray<RecordingResult> Results { get; }

    /// <summary>A path below the demo's folder.</summary>
    public string In(string relative) => folder.In(relative);

    /// <summary>The result of a session.</summary>
    public RecordingResult Of(string code) => Results.Single(result => string.Equals(result.Id, code, StringComparison.Ordinal));

    /// <summary>A file audited as the command does it.</summary>
    public RecordingResult Audited(RecordingEntry entry) => RecordingAudit.Of(entry, Setup, DefaultCriteria.All, null, CancellationToken.None);

    /// <summary>Every cell that did not pass, as <c>cheek line-noise reject</c>, with its trials.</summary>
    public static SortedDictionary<string, int[]> Blemishes(RecordingResult result)
    {
        var found = result.Channels
            .SelectMany(channel => channel.Cells.SelectMany(cell => cell.Reasons.Select(reason => (Cell: cell, Name: $"{channel.Name} {reason} {Word(cell.Verdict)}"))))
            .GroupBy(one => one.Name, one => one.Cell.Trial, StringComparer.Ordinal);
        return new SortedDictionary<string, int[]>(found.ToDictionary(group => group.Key, group => group.ToArray(), StringComparer.Ordinal), StringComparer.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static string Word(Grade grade) => grade == Grade.Reject ? "reject" : grade == Grade.Questionable ? "questionable" : "pass";
}
