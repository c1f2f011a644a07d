using System.Collections.Frozen;
using System.Reflection;

namespace ChannelAudit.Review;

/// <summary>The page itself: a few files inside this assembly. None of them holds data.</summary>
internal static class PageFiles
{
    private const string Shell = "review.html";
    private const string Icon = "review.svg";

    private static readonly Assembly Own = Assembly.GetExecutingAssembly();

    private static readonly FrozenDictionary<string, (byte[] Bytes, string Type)> Files = Own.GetManifestResourceNames()
        .ToFrozenDictionary(AddressOf, name => (Read(name), TypeOf(name)), StringComparer.Ordinal);

    /// <summary>The file at an address; null when there is none.</summary>
    /// <param name="path">The path of the address, <c>/review.css</c> for instance; <c>/</c> is the page.</param>
    public static (byte[] Bytes, string Type)? At(string path) => Files.TryGetValue(path, out (byte[] Bytes, string Type) file) ? file : null;

    private static string AddressOf(string name) => name switch
    {
        Shell => "/",
        Icon => "/favicon.ico",
        _ => "/" + name,
    };

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        _ => "image/svg+xml",
    };

    private static byte[] Read(string name)
    {
        using Stream stream = Own.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"the build embedded no {name}");
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
