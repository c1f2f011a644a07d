using System.Collections.Immutable;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Trends;

namespace ChannelAudit.Cli.Trending;

/// <summary>The folder of <c>trend --out</c>: pictures, two tables and a page; those of an earlier run are replaced in one go.</summary>
internal sealed class TrendFolder
{
    private const int MostPictures = 12;

    private readonly string _folder;
    private readonly List<(string Name, byte[] Bytes)> _files = [];

    /// <summary>Takes a folder that is new, empty, or of an earlier run.</summary>
    /// <exception cref="ChannelAuditException">When it holds anything else.</exception>
    public TrendFolder(string folder)
    {
        bool isFree = !File.Exists(folder)
            && (!Directory.Exists(folder) || Directory.EnumerateFileSystemEntries(folder).All(entry => File.Exists(entry) && IsOurs(Path.GetFileName(entry))));
        _folder = isFree ? folder : throw UsageErrors.NotForTrend(folder);
    }

    /// <summary>Names of the files, without the pictures of single stories.</summary>
    public static ImmutableArray<string> Written { get; } = [TrendPage.FileName, TrendTsv.FileName, TrendFindingsTsv.FileName, TrendFigure.FileName];

    /// <summary>Writes everything.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Write(TrendReport report, ImmutableArray<string> lead, OwnSetups? own)
    {
        ImmutableArray<byte[]> stories = [.. report.Stories.Where(story => story.PartOf is null).Take(MostPictures).Select(story => TrendStoryFigure.Render(report, story))];
        byte[] all = TrendFigure.Render(report);
        _files.Add((TrendTsv.FileName, TrendTsv.Render(report)));
        _files.Add((TrendFindingsTsv.FileName, TrendFindingsTsv.Render(report)));
        _files.Add((TrendFigure.FileName, all));
        _files.AddRange(stories.Select((png, i) => (TrendStoryFigure.FileName(i + 1), png)));
        _files.Add((TrendPage.FileName, new TrendPage(report, lead, own).Render((all, stories))));
        Remove(IsPartial);
        using OutputBatch batch = new(_folder);
        foreach ((string name, byte[] bytes) in _files)
        {
            batch.Add(name, bytes);
        }

        // The page speaks for all of it: it gets its name when no picture of an earlier run is left beside it.
        HashSet<string> kept = [.. batch.Files.Select(file => file.Path)];
        batch.Commit(() => Remove(name => IsStory(name) && !kept.Contains(name)));
    }

    private void Remove(Func<string, bool> isMeant)
    {
        try
        {
            foreach (string file in Directory.Exists(_folder) ? Directory.GetFiles(_folder).Where(file => isMeant(Path.GetFileName(file))) : [])
            {
                File.Delete(file);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(_folder, FileOption.OutFolder, fault);
        }
    }

    private static bool IsOurs(string name) =>
        name is TrendPage.FileName or TrendTsv.FileName or TrendFindingsTsv.FileName or TrendFigure.FileName || IsStory(name) || IsPartial(name);

    private static bool IsStory(string name) => name.StartsWith("trend-story-", StringComparison.Ordinal) && name.EndsWith(".png", StringComparison.Ordinal);

    // What a run that died has left.
    private static bool IsPartial(string name) => name.StartsWith(".trend", StringComparison.Ordinal) && name.EndsWith(OutputBatch.PartialSuffix, StringComparison.Ordinal);
}
