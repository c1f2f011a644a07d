using System.Collections.Immutable;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Pages;

/// <summary>The pictures of a recording that its page can show: inside the page up to a limit, beyond it from their own files.</summary>
public sealed class ReportFigures
{
    /// <summary>Bytes of pictures that a page carries inside itself; those beyond are shown from their own files.</summary>
    public const int InlineLimitBytes = 8 * 1024 * 1024;

    private readonly Dictionary<string, string> _inline = new(StringComparer.Ordinal);
    private readonly string _folder;

    private ReportFigures(string folder, ImmutableArray<FigureFile> figures)
    {
        _folder = folder;
        Names = [.. figures.Select(figure => figure.Name)];
        int bytes = 0;
        foreach (FigureFile figure in figures)
        {
            if (bytes + figure.Png.Length <= InlineLimitBytes)
            {
                bytes += figure.Png.Length;
                _inline[figure.Name] = "data:image/png;base64," + Convert.ToBase64String(figure.Png.Span);
            }
        }
    }

    /// <summary>The names of the pictures.</summary>
    internal ImmutableArray<string> Names { get; }

    /// <summary>Whether the page stands beside the recording's files, among those of other recordings.</summary>
    internal bool IsAmongOthers => _folder.Length == 0;

    /// <summary>For a page above the folders of the recordings.</summary>
    public static ReportFigures Above(string id, ImmutableArray<FigureFile> figures) => new($"recordings/{Uri.EscapeDataString(id)}/", figures);

    /// <summary>For a page in the folder of the recording.</summary>
    public static ReportFigures Beside(ImmutableArray<FigureFile> figures) => new(string.Empty, figures);

    /// <summary>What the page shows as a picture: the picture itself or a link to it; null when there is none.</summary>
    internal string? Source(string name) =>
        _inline.TryGetValue(name, out string? inline) ? inline : Names.Contains(name, StringComparer.Ordinal) ? Link(name) : null;

    /// <summary>A link from the page to a file of the recording; every part is escaped.</summary>
    internal string Link(string file) => _folder + Uri.EscapeDataString(file);

    /// <summary>A link from a page above the folders of the recordings to a file of one.</summary>
    internal static string Link(string id, string file) => $"recordings/{Uri.EscapeDataString(id)}/{Uri.EscapeDataString(file)}";
}
