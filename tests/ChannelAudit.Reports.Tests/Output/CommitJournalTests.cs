using System.Collections.Immutable;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Reports.Tests.Output;

/// <summary>A run that dies while its files get their names: at each of them, the next run goes on to the same end.</summary>
public sealed class CommitJournalTests
{
    [Fact]
    public void WhereverARunDiesTheNextOneGoesOnToItsEnd()
    {
        using TemporaryFolder sample = new();
        SampleResults.Run().Write(sample.Path, figures: null, CancellationToken.None);
        SampleResults.Run(SampleResults.Faulty()).Write(sample.Path, figures: null, CancellationToken.None);
        ImmutableArray<(string Path, byte[] Bytes)> expected = Content(sample.Path);
        int steps = expected.Length + 1;

        for (int died = 0; died < steps; died++)
        {
            using TemporaryFolder folder = new();
            SampleResults.Run().Write(folder.Path, figures: null, CancellationToken.None);
            DieAfter(died, folder, expected);
            Assert.Contains("put its files in place", Assert.Throws<ChannelAuditException>(() => StoredAudit.Open(folder.Path)).Message, StringComparison.Ordinal);

            Assert.True(CommitJournal.Complete(folder.Path, CancellationToken.None));

            Same(expected, Content(folder.Path));
            Assert.False(CommitJournal.Complete(folder.Path, CancellationToken.None));
        }
    }

    [Fact]
    public void TheFirstRunOfAFolderIsCompletedTooAndTheNextTakesItOver()
    {
        using TemporaryFolder sample = new();
        SampleResults.Run(SampleResults.Faulty()).Write(sample.Path, figures: null, CancellationToken.None);
        ImmutableArray<(string Path, byte[] Bytes)> expected = Content(sample.Path);
        using TemporaryFolder folder = new();
        DieAfter(3, folder, expected);

        using (AuditFolder opened = AuditFolder.Open(folder.Path))
        {
            Assert.Equal(expected.Length - 1, opened.Previous.Files.Length);
        }

        Same(expected, Content(folder.Path));
    }

    [Fact]
    public void ADamagedListMovesNothingAndLeadsNowhereElse()
    {
        using TemporaryFolder folder = new();
        folder.Put(".unfinished/new", "new");
        folder.Put("verdicts.tsv", "old");
        foreach (string list in new[] { "{", """{"moves": [{"from": ".unfinished/new", "to": "../elsewhere.tsv"}], "stale": []}""", """{"moves": 3}""" })
        {
            folder.Put(".unfinished/commit.json", list);

            Assert.Throws<ChannelAuditException>(() => CommitJournal.Complete(folder.Path, CancellationToken.None));

            Assert.Equal("old", File.ReadAllText(Path.Combine(folder.Path, "verdicts.tsv")));
            Assert.True(File.Exists(Path.Combine(folder.Path, ".unfinished/new")));
        }
    }

    [Fact]
    public void NamesOfARunThatDiedBeforeItsListAreSweptAway()
    {
        using TemporaryFolder folder = new();
        SampleResults.Run().Write(folder.Path, figures: null, CancellationToken.None);
        ImmutableArray<(string Path, byte[] Bytes)> before = Content(folder.Path);
        folder.Put(".report.html.4711.channelaudit-partial", "half");

        AuditFolder.Open(folder.Path).Dispose();

        Same(before, Content(folder.Path));
    }

    [Fact]
    public void AListWhoseRecordingWasMovedGoesAndARecordingThatWaitsStays()
    {
        using TemporaryFolder folder = new();
        SampleResults.Run().Write(folder.Path, figures: null, CancellationToken.None);
        ImmutableArray<(string Path, byte[] Bytes)> before = Content(folder.Path);
        folder.Put(".unfinished/recordings/K03/list.json", "{}");
        AuditFolder.Open(folder.Path).Dispose();
        Same(before, Content(folder.Path));
        Assert.False(Directory.Exists(Path.Combine(folder.Path, ".unfinished")));

        folder.Put(".unfinished/recordings/K04/list.json", "{}");
        folder.Put(".unfinished/recordings/K04/result.json", "{}");
        AuditFolder.Open(folder.Path).Dispose();

        Assert.True(File.Exists(Path.Combine(folder.Path, ".unfinished/recordings/K04/result.json")));
    }

    // What a commit has on the disk after some of its steps; the last step takes the old files away and moves audit.json.
    private static void DieAfter(int steps, TemporaryFolder folder, ImmutableArray<(string Path, byte[] Bytes)> expected)
    {
        (string Path, byte[] Bytes)[] files = [.. expected.OrderBy(file => file.Path is "audit.json")];
        string[] old = [.. Content(folder.Path).Select(file => file.Path).Except(files.Select(file => file.Path), StringComparer.Ordinal)];
        Directory.CreateDirectory(Path.Combine(folder.Path, ".unfinished"));
        CommitJournal.Write(folder.Path, files.Select((file, i) => (FormattableString.Invariant($".unfinished/{i}"), file.Path)), old);
        for (int i = 0; i < files.Length; i++)
        {
            string place = Path.Combine(folder.Path, i < steps ? files[i].Path : FormattableString.Invariant($".unfinished/{i}"));
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder.Path, files[i].Path))!);
            File.WriteAllBytes(place, files[i].Bytes);
        }

        if (steps >= files.Length)
        {
            StaleFiles.Remove(folder.Path, [.. old]);
        }
    }

    private static ImmutableArray<(string Path, byte[] Bytes)> Content(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => (Path.GetRelativePath(folder, file), File.ReadAllBytes(file)))
            .OrderBy(file => file.Item1, StringComparer.Ordinal),
    ];

    private static void Same(ImmutableArray<(string Path, byte[] Bytes)> expected, ImmutableArray<(string Path, byte[] Bytes)> found)
    {
        Assert.Equal(expected.Select(file => file.Path), found.Select(file => file.Path), StringComparer.Ordinal);
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First.Bytes, pair.Second.Bytes));
    }
}
