using System.Text;

namespace ChannelAudit.Reports.Verifying;

/// <summary>Finds the first difference between two files in the way that their kind is read.</summary>
public static class FileComparison
{
    /// <summary>The first difference, or null when all bytes are the same.</summary>
    /// <param name="file">The path below the folder of the audit; its ending says what it is.</param>
    /// <param name="there">The bytes that stand there.</param>
    /// <param name="again">The bytes that come out when it is made again.</param>
    public static FileDifference? Of(string file, byte[] there, byte[] again)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (there.AsSpan().SequenceEqual(again))
        {
            return null;
        }

        FileDifference? found = Path.GetExtension(file) switch
        {
            ".tsv" => LineComparison.Of(file, Text(there), Text(again), isTable: true),
            ".json" => JsonComparison.Of(file, there, again) ?? LineComparison.Of(file, Text(there), Text(again), isTable: false),
            ".html" or ".md" or ".txt" or ".jsonl" or ".toml" => LineComparison.Of(file, Text(there), Text(again), isTable: false),
            _ => null,
        };
        return found ?? new FileDifference(file, string.Empty, Size(there), Size(again));
    }

    private static string Text(byte[] utf8) => Encoding.UTF8.GetString(utf8);

    private static string Size(byte[] bytes) => FormattableString.Invariant($"{bytes.Length} bytes");
}
