using System.Buffers;

namespace ChannelAudit.Reports.Output;

/// <summary>Which relative paths stay below the output folder on every system.</summary>
internal static class SafePath
{
    private static readonly SearchValues<char> Unsafe = SearchValues.Create(
        [.. Enumerable.Range(0, 0x20).Select(code => (char)code), '\\', ':', '*', '?', '"', '<', '>', '|', '\x7F']);

    /// <summary>Whether a path with <c>/</c> leads to a place below its start.</summary>
    public static bool IsBelow(string path) => path.Length > 0 && path.Split('/').All(IsName);

    /// <summary>Whether a text is the name of one file or folder.</summary>
    public static bool IsName(string name) =>
        name.Length > 0 && name is not ("." or "..") && !name.Contains('/', StringComparison.Ordinal) && !name.AsSpan().ContainsAny(Unsafe);
}
