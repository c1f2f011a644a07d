using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace ChannelAudit.Reports.Pages;

/// <summary>A page in the making: everything but our own markup is encoded.</summary>
internal sealed class HtmlText
{
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    private readonly StringBuilder _text = new();

    /// <summary>Our own markup, as it stands.</summary>
    public HtmlText Markup(string markup)
    {
        _text.Append(markup);
        return this;
    }

    /// <summary>A line of our own markup.</summary>
    public HtmlText Line(string markup)
    {
        _text.Append(markup).Append('\n');
        return this;
    }

    /// <summary>Text, encoded.</summary>
    public HtmlText Text(string text)
    {
        _text.Append(Encoder.Encode(text));
        return this;
    }

    /// <summary>An element that holds text. Text from files keeps its own writing direction.</summary>
    /// <param name="tag">The element with its attributes, all of them our own.</param>
    /// <param name="text">What stands in it.</param>
    public HtmlText Element(string tag, string text)
    {
        int blank = tag.IndexOf(' ', StringComparison.Ordinal);
        string name = blank < 0 ? tag : tag[..blank];
        return Markup($"<{tag}>").Text(text).Markup($"</{name}>");
    }

    /// <summary>An element on a line of its own.</summary>
    public HtmlText ElementLine(string tag, string text) => Element(tag, text).Line(string.Empty);

    /// <summary>A label from a file: isolated, so that its writing direction cannot reach beyond it.</summary>
    public HtmlText Label(string text) => Element("bdi", text);

    /// <summary>Starts a table with its caption and column heads; where the screen is too narrow it scrolls by itself.</summary>
    public HtmlText Table(string cssClass, string caption, params ReadOnlySpan<string> heads)
    {
        Line($"<div class=\"wide\"><table class=\"{cssClass}\">").ElementLine("caption", caption).Markup("<thead><tr>");
        foreach (string head in heads)
        {
            Element("th scope=\"col\"", head);
        }

        return Line("</tr></thead><tbody>");
    }

    /// <summary>Ends a table.</summary>
    public HtmlText EndTable() => Line("</tbody></table></div>");

    /// <summary>An attribute's value, encoded.</summary>
    public static string Attribute(string value) => Encoder.Encode(value);

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();
}
