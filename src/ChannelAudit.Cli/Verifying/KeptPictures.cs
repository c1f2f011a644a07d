using System.Collections.Immutable;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Verifying;

/// <summary>The pictures that stand in an audit, for pages that are made again without drawing.</summary>
/// <param name="run">The audit.</param>
internal sealed class KeptPictures(RecordedRun run)
{
    /// <summary>Those of a recording in the order in which they are listed; one that is gone is left out.</summary>
    public ImmutableArray<FigureFile> Of(string id)
    {
        string start = $"recordings/{id}/";
        return
        [
            .. run.Files
                .Where(file => file.Path.StartsWith(start, StringComparison.Ordinal) && file.Path.EndsWith(".png", StringComparison.Ordinal))
                .Select(file => (Name: file.Path[start.Length..], Place: Path.Combine(run.Audit.Folder, file.Path)))
                .Where(file => File.Exists(file.Place))
                .Select(file => new FigureFile(file.Name, PlainFile.ReadAllBytes(file.Place))),
        ];
    }
}
