using System.Collections.Immutable;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Trends;

namespace ChannelAudit.Cli.Trending;

/// <summary>The folder of <c>trend --out</c>: a page, two tables and pictures; one of an earlier run is replaced.</summary>
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

    /// <summary>Names of the files that were written, without the pictures of single stories.</summary>
    public IEnumerable<string> Written => _files.Select(file => file.Name).Where(name => !name.StartsWith("trend-story-", StringComparison.Ordinal));

    /// <summary>Writes everything.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Write(TrendReport report, ImmutableArray<string> lead, OwnSetups? own)
    {
        ImmutableArray<byte[]> stories = [.. report.Stories.Where(story => story.PartOf is null).Take(MostPictures).Select(story => TrendStoryFigure.Render(report, story))];
        byte[] all = TrendFigure.Render(report);
        _files.Add((TrendPage.FileName, new TrendPage(report, lead, own).Render((all, stories))));
        _files.Add((TrendTsv.FileName, TrendTsv.Render(report)));
        _files.Add((TrendFindingsTsv.FileName, TrendFindingsTsv.Render(report)));
        _files.Add((TrendFigure.FileName, all));
        _files.AddRange(stories.Select((png, i) => (TrendStoryFigure.FileName(i + 1), png)));
        try
        {
            Directory.CreateDirectory(_folder);
            foreach (string old in Directory.EnumerateFiles(_folder).Where(file => IsOurs(Path.GetFileName(file))))
            {
                File.Delete(old);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(_folder, FileOption.OutFolder, fault);
        }

        foreach ((string name, byte[] bytes) in _files)
        {
            NewFile.Write(Path.Combine(_folder, name), bytes, FileOption.OutFolder);
        }
    }

    private static bool IsOurs(string name) =>
        name is TrendPage.FileName or TrendTsv.FileName or TrendFindingsTsv.FileName or TrendFigure.FileName
        || (name.StartsWith("trend-story-", StringComparison.Ordinal) && name.EndsWith(".png", StringComparison.Ordinal));
}
