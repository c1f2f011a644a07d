using System.Collections.Immutable;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Pages;

/// <summary>The pictures that the report can show: the session ribbons inside the page, up to a limit, all others as links.</summary>
public sealed class ReportFigures
{
    /// <summary>Bytes of pictures that the page carries inside itself; those beyond are shown from their own files beside it.</summary>
    public const int InlineLimitBytes = 8 * 1024 * 1024;

    private readonly Dictionary<string, ImmutableArray<string>> _names = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _inline = new(StringComparer.Ordinal);
    private int _inlineBytes;

    /// <summary>Adds the pictures of a recording.</summary>
    public void Add(string id, ImmutableArray<FigureFile> figures)
    {
        _names[id] = [.. figures.Select(figure => figure.Name)];
        FigureFile? ribbon = figures.FirstOrDefault(figure => string.Equals(figure.Name, FigureFile.SessionRibbon, StringComparison.Ordinal));
        if (ribbon is not null && _inlineBytes + ribbon.Png.Length <= InlineLimitBytes)
        {
            _inlineBytes += ribbon.Png.Length;
            _inline[id] = "data:image/png;base64," + Convert.ToBase64String(ribbon.Png.Span);
        }
    }

    /// <summary>The names of a recording's pictures.</summary>
    internal ImmutableArray<string> Names(string id) => _names.GetValueOrDefault(id, []);

    /// <summary>What the page shows as the recording's ribbon: the picture itself or a link to it; null when there is none.</summary>
    internal string? Ribbon(string id)
    {
        if (_inline.TryGetValue(id, out string? inline))
        {
            return inline;
        }

        return Names(id).Contains(FigureFile.SessionRibbon, StringComparer.Ordinal) ? Link(id, FigureFile.SessionRibbon) : null;
    }

    /// <summary>A link from the page to a file of a recording; every part is escaped.</summary>
    internal static string Link(string id, string file) => $"recordings/{Uri.EscapeDataString(id)}/{Uri.EscapeDataString(file)}";
}
