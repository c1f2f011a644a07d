using System.Diagnostics;
using ChannelAudit.Fuzz;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Reports.Tests.Hostile;

/// <summary>Reads every stored seed of the fuzzing campaign again: what once broke a reader must not break it a second time.</summary>
public sealed class FuzzSeedTests
{
    // The campaign's own limit; as there, an input that took longer is read again, and the quickest counts: other tests run beside.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);
    private const int Readings = 3;

    public static TheoryData<string> Kinds { get; } = [.. Targets.All.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void EveryStoredSeedIsReadOrRefusedInTimeAndWithinItsMemory(string kind)
    {
        using TemporaryFolder folder = new();

        // What is loaded and compiled once is not counted to a seed.
        Guarded.Run(kind, "\n"u8.ToArray(), folder.Folder);

        foreach (string seed in Seeds(kind))
        {
            TimeSpan quickest = TimeSpan.MaxValue;
            for (int reading = 0; reading < Readings && quickest >= Longest; reading++)
            {
                Stopwatch watch = Stopwatch.StartNew();
                Exception? fault = Record.Exception(() => Guarded.Run(kind, File.ReadAllBytes(seed), folder.Folder));

                Assert.True(fault is null, $"{kind}/{Path.GetFileName(seed)}: {fault}");
                quickest = watch.Elapsed < quickest ? watch.Elapsed : quickest;
            }

            Assert.True(quickest < Longest, FormattableString.Invariant($"{kind}/{Path.GetFileName(seed)}: {quickest.TotalSeconds} s"));
        }
    }

    [Theory]
    [InlineData("bdf", "plain.bdf")]
    [InlineData("edf", "annotated.edf")]
    [InlineData("text", "comma.csv")]
    [InlineData("channels", "channels.tsv")]
    [InlineData("setup", "everything.toml")]
    [InlineData("criteria", "alternatives.toml")]
    [InlineData("readings", "across.tsv")]
    [InlineData("decisions", "decisions.tsv")]
    [InlineData("exclusions", "verdicts.csv")]
    [InlineData("labels", "two-raters.tsv")]
    [InlineData("events", "trials.tsv")]
    public void SeedsToBeginWithAreGoodFiles(string kind, string name)
    {
        using TemporaryFolder folder = new();

        string? fault = Guarded.Run(kind, File.ReadAllBytes(Path.Combine(SeedFolder, kind, name)), folder.Folder);

        Assert.Null(fault);
    }

    [Fact]
    public void EveryFolderOfSeedsBelongsToAReader()
    {
        string[] folders = [.. Directory.EnumerateDirectories(SeedFolder).Select(folder => Path.GetFileName(folder)!)];

        Assert.NotEmpty(folders);
        Assert.All(folders, folder => Assert.Contains(folder, Targets.All.Keys, StringComparer.Ordinal));
    }

    private static string SeedFolder => Path.GetFullPath(Path.Combine(RepositoryRoot.Fixture("."), "..", "tests", "ChannelAudit.Fuzz", "seeds"));

    private static IEnumerable<string> Seeds(string kind)
    {
        string folder = Path.Combine(SeedFolder, kind);
        return Directory.Exists(folder) ? Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal) : [];
    }
}
