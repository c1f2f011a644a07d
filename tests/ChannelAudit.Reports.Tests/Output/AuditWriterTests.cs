using System.Collections.Immutable;
using System.Security.Cryptography;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Output;

public sealed class AuditWriterTests
{
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47];

    [Fact]
    public void EveryFileOfTheContractIsWrittenAndListed()
    {
        using TemporaryFolder folder = new();

        ImmutableArray<OutputFile> files = SampleResults.Run(SampleResults.Faulty()).Write(folder.Path, Figures, CancellationToken.None);

        string[] expected =
        [
            "audit.json", "channels.tsv", "conditions.tsv", "fairness-shares.tsv", "fairness.tsv", "methods-paragraph.json", "methods-paragraph.md", "recordings/day1+p07/measures.tsv", "recordings/day1+p07/pairs.tsv",
            "recordings/day1+p07/result.json", "recordings/day1+p07/session-ribbon.png", "report.html", "sensitivity.tsv", "verdicts.tsv",
        ];
        Assert.Equal(expected, folder.Files());
        Assert.Equal(expected, files.Select(file => file.Path).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal("audit.json", files[^1].Path);
        foreach (OutputFile file in files)
        {
            byte[] bytes = File.ReadAllBytes(Path.Combine(folder.Path, file.Path));
            Assert.Equal(file.Sha256, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        }
    }

    [Fact]
    public void TheSameResultsGiveTheSameBytesInAnotherFolder()
    {
        using TemporaryFolder first = new();
        using TemporaryFolder second = new();
        second.Put("old.channelaudit-partial", "left over");

        ImmutableArray<OutputFile> one = SampleResults.Run().Write(first.Path, Figures, CancellationToken.None);
        ImmutableArray<OutputFile> two = CommaCulture.Run(() => SampleResults.Run().Write(second.Path, Figures, CancellationToken.None));

        Assert.Equal(one.AsEnumerable(), two.AsEnumerable());
    }

    [Fact]
    public void WhatAnEarlierAuditWroteAndThisOneDoesNotIsRemovedAndNothingElse()
    {
        using TemporaryFolder folder = new();
        SampleResults.Run().Write(folder.Path, Figures, CancellationToken.None);
        folder.Put("decisions.jsonl", "{}");
        folder.Put("notes.txt", "mine");
        folder.Put("recordings/day1+p08/mine.txt", "mine");

        SampleResults.Run(SampleResults.Faulty()).Write(folder.Path, figures: null, CancellationToken.None);

        Assert.Equal(
            [
                "audit.json", "channels.tsv", "conditions.tsv", "decisions.jsonl", "fairness-shares.tsv", "fairness.tsv", "methods-paragraph.json", "methods-paragraph.md", "notes.txt", "recordings/day1+p07/measures.tsv",
                "recordings/day1+p07/pairs.tsv", "recordings/day1+p07/result.json", "recordings/day1+p08/mine.txt", "report.html", "sensitivity.tsv", "verdicts.tsv",
            ],
            folder.Files());
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "recordings/day2+p09")));
    }

    [Fact]
    public void AListChangedByHandRemovesNothingThatIsNotOurs()
    {
        using TemporaryFolder outer = new();
        outer.Put("precious.tsv", "1");
        string folder = Path.Combine(outer.Path, "audit");
        outer.Put("audit/decisions.jsonl", "{}");
        outer.Put("audit/recordings/deep/er/x.tsv", "1");
        string[] listed = ["../precious.tsv", outer.Path + "/precious.tsv", "decisions.jsonl", "recordings/deep/er/x.tsv", "recordings/../../precious.tsv"];
        outer.Put("audit/audit.json", $$"""{"format": "channelaudit-audit/1", "files": [{{string.Join(',', listed.Select(path => $$"""{"path": "{{path}}"}"""))}}]}""");

        SampleResults.Run(SampleResults.Faulty()).Write(folder, figures: null, CancellationToken.None);

        Assert.Contains("precious.tsv", outer.Files(), StringComparer.Ordinal);
        Assert.Contains("audit/decisions.jsonl", outer.Files(), StringComparer.Ordinal);
        Assert.Contains("audit/recordings/deep/er/x.tsv", outer.Files(), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("thesis.docx", "x", "thesis.docx")]
    [InlineData("audit.json", "{\"name\": \"another program's\"}", "audit.json")]
    [InlineData("audit.json", "not json", "audit.json")]
    [InlineData("recordings/p07/notes.txt", "x", "recordings/p07/notes.txt")]
    public void AFolderThatIsNoAuditIsRefusedAndLeftAlone(string file, string text, string named)
    {
        using TemporaryFolder folder = new();
        folder.Put(file, text);

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => SampleResults.Run().Write(folder.Path, figures: null, CancellationToken.None));

        Assert.Equal($"{folder.Path}: not empty and not an audit: '{named}' is in it", fault.Message.Replace('\\', '/'));
        Assert.Equal(FaultKind.Usage, fault.Kind);
        Assert.Equal([file], folder.Files());
        Assert.Equal(text, folder.Read(file));
    }

    [Fact]
    public void AFileInPlaceOfTheFolderIsRefused()
    {
        using TemporaryFolder folder = new();
        folder.Put("audit", "a file");

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => SampleResults.Run().Write(Path.Combine(folder.Path, "audit"), figures: null, CancellationToken.None));

        Assert.EndsWith(": a file, not a folder", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ARunThatFailsHalfWayLeavesTheEarlierAuditAsItWas()
    {
        using TemporaryFolder folder = new();
        ImmutableArray<OutputFile> before = SampleResults.Run().Write(folder.Path, Figures, CancellationToken.None);

        Assert.Throws<InvalidOperationException>(() => SampleResults.Run(SampleResults.Large(20)).Write(folder.Path, Fails, CancellationToken.None));

        Assert.Equal(before.Select(file => file.Path).Order(StringComparer.Ordinal), folder.Files(), StringComparer.Ordinal);
        Assert.All(before, file => Assert.Equal(
            file.Sha256, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(folder.Path, file.Path))))));
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "recordings/hour")));
    }

    [Fact]
    public void ACancelledFirstRunLeavesNothing()
    {
        using TemporaryFolder folder = new();
        using CancellationTokenSource cancel = new();
        string place = Path.Combine(folder.Path, "new/audit");

        Assert.Throws<OperationCanceledException>(() => SampleResults.Run().Write(place,
            (_, _) =>
            {
                cancel.Cancel();
                return [];
            },
            cancel.Token));

        Assert.Empty(folder.Files());
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "new")));
    }

    [Theory]
    [InlineData("../x")]
    [InlineData("..")]
    [InlineData("a/b")]
    [InlineData("a\\b")]
    [InlineData("")]
    [InlineData("C:x")]
    [InlineData("a\nb")]
    public void AnIdThatLeadsElsewhereIsRefused(string id)
    {
        using TemporaryFolder folder = new();

        Assert.Throws<ArgumentException>(() => SampleResults.Run(SampleResults.Clean("x") with { Id = id }).Write(Path.Combine(folder.Path, "audit"), figures: null, CancellationToken.None));
        Assert.Empty(folder.Files());
    }

    [Fact]
    public void AFolderThatCannotBeMadeIsOneErrorWithAHint()
    {
        using TemporaryFolder folder = new();
        folder.Put("file", "not a folder");

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(
            () => SampleResults.Run().Write(Path.Combine(folder.Path, "file/audit"), figures: null, CancellationToken.None));

        Assert.StartsWith($"{Path.Combine(folder.Path, "file/audit")}: cannot be written: ", fault.Message, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Hint);
        Assert.Equal(["file"], folder.Files());
    }

    private static ImmutableArray<FigureFile> Figures(RecordingResult recording, CancellationToken cancel) =>
        [new FigureFile(FigureFile.SessionRibbon, Png)];

    private static ImmutableArray<FigureFile> Fails(RecordingResult recording, CancellationToken cancel) =>
        throw new InvalidOperationException("no ink");
}
