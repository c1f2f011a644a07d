using System.Collections.Immutable;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The files of an audit against those that come out when it is made again.</summary>
/// <param name="Same">How many are the same.</param>
/// <param name="Differing">Those that are not, tables first.</param>
/// <param name="First">The first difference in the first of them; null when there is none.</param>
public sealed record FolderComparison(int Same, ImmutableArray<string> Differing, FileDifference? First)
{
    /// <summary>Compares files byte for byte.</summary>
    /// <param name="there">The folder of the audit.</param>
    /// <param name="again">The folder it was made again in.</param>
    /// <param name="files">Paths below both.</param>
    public static FolderComparison Of(string there, string again, IEnumerable<string> files)
    {
        string[] ordered = [.. files.Distinct(StringComparer.Ordinal).OrderBy(Rank)];
        ImmutableArray<string> differing = [.. ordered.Where(file => !AreSame(Path.Combine(there, file), Path.Combine(again, file)))];
        FileDifference? first = differing.IsEmpty ? null : FirstIn(differing[0], Path.Combine(there, differing[0]), Path.Combine(again, differing[0]));
        return new FolderComparison(ordered.Length - differing.Length, differing, first);
    }

    // A number in a table says most to a person; the list of all files says least.
    private static int Rank(string file) => (Path.GetExtension(file), file.Contains('/', StringComparison.Ordinal)) switch
    {
        (".tsv", false) => 0,
        (".tsv", true) => 1,
        (".json", true) => 2,
        (".parquet", false) => 3,
        (".json", false) => 4,
        _ => 5,
    };

    private static bool AreSame(string there, string again) =>
        File.Exists(there) && File.Exists(again) && string.Equals(InputKey.HashOf(there), InputKey.HashOf(again), StringComparison.Ordinal);

    private static FileDifference? FirstIn(string file, string there, string again) => (File.Exists(there), File.Exists(again)) switch
    {
        (true, true) => FileComparison.Of(file, PlainFile.ReadAllBytes(there), PlainFile.ReadAllBytes(again)),
        (false, _) => new FileDifference(file, string.Empty, FileDifference.Nothing, "a file"),
        _ => new FileDifference(file, string.Empty, "a file", FileDifference.Nothing),
    };
}
