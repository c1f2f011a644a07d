using System.Reflection;

namespace ChannelAudit.Review;

/// <summary>The page itself: four files inside this assembly.</summary>
internal static class PageFiles
{
    /// <summary>The shell; it holds no data.</summary>
    public static byte[] Html { get; } = Read("review.html");

    /// <summary>The style sheet.</summary>
    public static byte[] Css { get; } = Read("review.css");

    /// <summary>The script.</summary>
    public static byte[] Script { get; } = Read("review.js");

    /// <summary>The sign in the tab: a trace between two lines.</summary>
    public static byte[] Icon { get; } = Read("review.svg");

    private static byte[] Read(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"the build embedded no {name}");
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
