using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Typed;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Output;

/// <summary>The tables of a run that are written as Parquet files too, while recordings come in.</summary>
internal sealed class ParquetTables : IDisposable
{
    /// <summary>The file that has the rows of every recording's <c>measures.tsv</c>.</summary>
    public const string Measures = "measures.parquet";

    /// <summary>The file that has the rows of every recording's <c>pairs.tsv</c>.</summary>
    public const string Pairs = "pairs.parquet";

    private const string Verdicts = "verdicts.parquet";

    private readonly GrowingTable<ParquetTable> _verdicts;
    private readonly GrowingTable<ParquetTable> _measures;
    private readonly GrowingTable<ParquetTable> _pairs;

    /// <summary>Starts them.</summary>
    /// <param name="run">With what the recordings are audited.</param>
    /// <param name="folder">Where results go.</param>
    public ParquetTables(AuditRun run, AuditFolder folder)
    {
        _verdicts = Table(Verdicts, TypedColumns.Verdicts);
        _measures = Table(Measures, TypedColumns.Measures);
        _pairs = Table(Pairs, TypedColumns.Pairs);

        GrowingTable<ParquetTable> Table(string name, ImmutableArray<TypedColumn> columns) => new(
            name,
            folder.PlaceOfTable(name),
            stream => new ParquetTable(columns, new ParquetLabel(Path.GetFileNameWithoutExtension(name), run.Version, run.Criteria.Sha256), stream));
    }

    /// <summary>Whether an audit has them: all or none.</summary>
    /// <param name="files">Its files.</param>
    public static bool AreAmong(IEnumerable<OutputFile> files) => files.Any(file => string.Equals(file.Path, Verdicts, StringComparison.Ordinal));

    /// <summary>Adds a recording.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void Add(RecordingResult recording)
    {
        _verdicts.Add(table => VerdictsTsv.AddRows(table, recording));
        _measures.Add(table => MeasuresTsv.AddRows(table, recording, recording.Id));
        _pairs.Add(table => PairsTsv.AddRows(table, recording, recording.Id));
    }

    /// <summary>Ends them and hands them to a batch.</summary>
    /// <exception cref="ChannelAuditException">When the operating system refuses.</exception>
    public void HandTo(OutputBatch batch)
    {
        _verdicts.HandTo(batch);
        _measures.HandTo(batch);
        _pairs.HandTo(batch);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _verdicts.Dispose();
        _measures.Dispose();
        _pairs.Dispose();
    }
}
