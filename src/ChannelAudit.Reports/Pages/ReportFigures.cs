using System.Collections.Immutable;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Pages;

/// <summary>The pictures that the report can show: inside the page up to a limit, beyond it from their own files.</summary>
public sealed class ReportFigures
{
    /// <summary>Bytes of pictures that the page carries inside itself; those beyond are shown from their own files beside it.</summary>
    public const int InlineLimitBytes = 8 * 1024 * 1024;

    private readonly Dictionary<string, ImmutableArray<string>> _names = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Id, string Name), string> _inline = [];
    private int _inlineBytes;

    /// <summary>Adds the pictures of a recording.</summary>
    public void Add(string id, ImmutableArray<FigureFile> figures)
    {
        _names[id] = [.. figures.Select(figure => figure.Name)];
        foreach (FigureFile figure in figures)
        {
            if (_inlineBytes + figure.Png.Length <= InlineLimitBytes)
            {
                _inlineBytes += figure.Png.Length;
                _inline[(id, figure.Name)] = "data:image/png;base64," + Convert.ToBase64String(figure.Png.Span);
            }
        }
    }

    /// <summary>The names of a recording's pictures.</summary>
    internal ImmutableArray<string> Names(string id) => _names.GetValueOrDefault(id, []);

    /// <summary>What the page shows as a picture of a recording: the picture itself or a link to it; null when there is none.</summary>
    internal string? Source(string id, string name)
    {
        if (_inline.TryGetValue((id, name), out string? inline))
        {
            return inline;
        }

        return Names(id).Contains(name, StringComparer.Ordinal) ? Link(id, name) : null;
    }

    /// <summary>A link from the page to a file of a recording; every part is escaped.</summary>
    internal static string Link(string id, string file) => $"recordings/{Uri.EscapeDataString(id)}/{Uri.EscapeDataString(file)}";
}
