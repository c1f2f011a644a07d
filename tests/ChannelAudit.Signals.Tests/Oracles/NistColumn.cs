using System.Globalization;
using ChannelAudit.TestKit;

namespace ChannelAudit.Signals.Tests.Oracles;

/// <summary>Data columns of the NIST Statistical Reference Datasets, kept side by side in fixtures/nist/univariate.tsv.</summary>
internal static class NistColumn
{
    /// <summary>Gives the observations of a set in the order of its page; columns shorter than the longest are filled up with n/a.</summary>
    public static double[] Of(string set)
    {
        // The first line names the page, the second the sets.
        string[][] rows = [.. File.ReadLines(RepositoryRoot.Fixture("nist/univariate.tsv")).Skip(1).Select(line => line.Split('\t'))];
        var index = Array.IndexOf(rows[0], set);
        return
        [
            .. rows.Skip(1)
                .Select(cells => cells[index])
                .Where(cell => !string.Equals(cell, "n/a", StringComparison.Ordinal))
                .Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)),
        ];
    }
}
