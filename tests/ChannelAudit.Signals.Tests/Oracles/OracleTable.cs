using System.Globalization;
using ChannelAudit.TestKit;

namespace ChannelAudit.Signals.Tests.Oracles;

/// <summary>A stored table of SciPy's answers: a case in the first column, numbers in the others.</summary>
internal sealed class OracleTable
{
    private readonly string[] _header;
    private readonly List<(string Case, double[] Values)> _rows;

    private OracleTable(string[] lines)
    {
        _header = lines[0].Split('\t');
        _rows = [.. lines.Skip(1).Select(line => line.Split('\t')).Select(cells =>
            (cells[0], cells.Skip(1).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()))];
    }

    public static OracleTable Read(string name) =>
        new(File.ReadAllLines(RepositoryRoot.Fixture($"oracles/{name}.tsv")));

    public double[] Column(string name, string column)
    {
        var index = Array.IndexOf(_header, column) - 1;
        double[] values = [.. _rows.Where(row => string.Equals(row.Case, name, StringComparison.Ordinal)).Select(row => row.Values[index])];
        Assert.NotEmpty(values);
        return values;
    }

    public double Value(string name, string column) => Assert.Single(Column(name, column));
}
