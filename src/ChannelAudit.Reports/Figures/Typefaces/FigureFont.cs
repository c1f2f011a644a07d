using ScottPlot;
using SkiaSharp;

namespace ChannelAudit.Reports.Figures.Typefaces;

/// <summary>The one font of all figures: Inter, embedded in this assembly, in regular and bold.</summary>
/// <remarks>
/// Whatever name, weight or slant ScottPlot asks for, it gets this font and never one of the machine: a figure must have the same
/// bytes whether or not fonts are installed. Characters the font does not have appear as its box of stripes.
/// </remarks>
public sealed class FigureFont : IFontResolver
{
    private const int BoldFrom = (int)SKFontStyleWeight.SemiBold;

    private static readonly Lazy<SKTypeface> Regular = new(() => Load("Inter-Regular.ttf"));
    private static readonly Lazy<SKTypeface> Bold = new(() => Load("Inter-Bold.ttf"));
    private static readonly Lazy<bool> Installed = new(ReplaceResolvers);

    /// <summary>The name under which ScottPlot's own texts ask for it.</summary>
    public static string Name => "Inter";

    /// <summary>Makes it the only font that ScottPlot knows; the first call does it, later ones do nothing.</summary>
    public static void Install() => _ = Installed.Value;

    /// <inheritdoc/>
    public SKTypeface CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        Typeface((int)weight.ToSKFontStyleWeight() >= BoldFrom);

    /// <inheritdoc/>
    public SKTypeface CreateTypeface(string fontName, bool bold, bool italic) => Typeface(bold);

    /// <summary>The font at a size in pixels; the caller disposes of it.</summary>
    internal static SKFont Create(float size, bool bold) => new(Typeface(bold), size)
    {
        Subpixel = true,
        Edging = SKFontEdging.Antialias,
        Hinting = SKFontHinting.None,
    };

    /// <summary>Whether the font has a character.</summary>
    internal static bool Has(int codePoint) => Regular.Value.ContainsGlyph(codePoint);

    private static SKTypeface Typeface(bool bold) => (bold ? Bold : Regular).Value;

    private static SKTypeface Load(string resource)
    {
        using Stream stream = typeof(FigureFont).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"the build embedded no {resource}");
        return SKTypeface.FromStream(stream) ?? throw new InvalidOperationException($"{resource} is no font");
    }

    private static bool ReplaceResolvers()
    {
        Fonts.FontResolvers.Clear();
        Fonts.FontResolvers.Add(new FigureFont());
        Fonts.Default = Name;
        Fonts.Sans = Name;
        Fonts.Serif = Name;
        Fonts.Monospace = Name;
        return true;
    }
}
