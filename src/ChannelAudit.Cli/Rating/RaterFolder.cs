using ChannelAudit.Cli.Commands;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Raters;

namespace ChannelAudit.Cli.Rating;

/// <summary>The folder of <c>raters --out</c>: tables, and a picture of the curves.</summary>
internal sealed class RaterFolder
{
    private readonly string _folder;

    /// <summary>Takes a folder that must be new or empty.</summary>
    /// <exception cref="ChannelAuditException">When it is neither.</exception>
    public RaterFolder(string folder)
    {
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw UsageErrors.NotForTables(folder);
        }

        _folder = folder;
    }

    /// <summary>Names of the files that were written.</summary>
    public List<string> Written { get; } = [];

    /// <summary>Writes everything.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Write(RaterStudy study)
    {
        try
        {
            Directory.CreateDirectory(_folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw UsageErrors.CannotWrite(_folder, FileOption.OutFolder, fault);
        }

        foreach ((string name, byte[] bytes) in RaterTables.All(study))
        {
            Write(name, bytes);
        }

        foreach (RatedSet set in study.Sets.Where(set => !set.Curves.IsEmpty))
        {
            Write($"curves-{RaterTables.Code(set.Kind)}.png", RaterCurves.Render(set, FigureSize.Full));
        }
    }

    private void Write(string name, byte[] bytes)
    {
        NewFile.Write(Path.Combine(_folder, name), bytes, FileOption.OutFolder);
        Written.Add(name);
    }
}
