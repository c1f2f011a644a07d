using System.Collections.Immutable;
using System.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>Opens recordings kept as delimited text: one column a channel, one row a sample.</summary>
/// <remarks>
/// Told by content: encoding, separator, decimal sign, preamble, header, unit row, time column and marker columns. Numbers are checked and spooled once to a
/// temporary file that vanishes on closing, so memory does not grow with the length of the recording.
/// </remarks>
public static class DelimitedText
{
    /// <summary>Opens a recording.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What the setup says where the file is silent.</param>
    /// <returns>The recording; samples in µV, or in the file's own numbers for raw codes.</returns>
    /// <exception cref="ChannelAuditException">When the file cannot be read as a recording.</exception>
    public static Recording Open(string path, ReadOptions options)
    {
        string file = Path.GetFileName(path);
        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 1 << 16, FileOptions.SequentialScan);
            return Open(stream, file, options);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException or UnauthorizedAccessException or IOException)
        {
            throw TextErrors.Unreadable(file, fault);
        }
    }

    private static Recording Open(FileStream whole, string file, ReadOptions options)
    {
        TextSample sample = TextSample.Read(whole, file);
        int bytes = sample.Encoding is UnicodeEncoding ? 2 : 1;
        long end = WholeLines.EndOf(whole, bytes);
        using LeadingStream? growing = options.IsGrowing ? new LeadingStream(whole, end) : null;
        sample = growing is null ? sample : TextSample.Read(growing, file);

        TextLayout layout = LayoutFinder.Find(sample.Lines, file);
        RefuseEventsTable(layout, file);
        WarningList warnings = new(file);
        using LeadingStream? torn = !options.IsGrowing && IsTorn(whole, end, sample, layout) ? new LeadingStream(whole, end) : null;
        if (torn is not null)
        {
            warnings.Add("last line", "half written, with no end of its own: left out");
        }

        Preamble preamble = Preamble.Read(layout.Preamble, layout.Dialect);
        ImmutableArray<ColumnPlan> plans = UnitRules.Apply(ColumnPlanner.Plan(layout), preamble, options, warnings);
        if (!plans.Any(plan => plan.Role == ColumnRole.Signal))
        {
            throw TextErrors.NoChannel(file);
        }

        SpooledTable table = Spool(torn ?? (Stream?)growing ?? whole, sample, layout, plans, file, options);
        try
        {
            return TextRecording.Make(file, table, preamble, options, warnings);
        }
        catch
        {
            table.Spool.Dispose();
            throw;
        }
    }

    private static SpooledTable Spool(Stream stream, TextSample sample, TextLayout layout, ImmutableArray<ColumnPlan> plans, string file, ReadOptions options)
    {
        TableSpooler spooler = new(file, layout, plans, [.. plans.Select(UnitRules.Scale)]);
        try
        {
            return spooler.Spool(stream, sample.Encoding, options.TemporaryFolder);
        }
        catch (Exception fault) when (fault is NotSupportedException or InvalidDataException)
        {
            // The splitter gives up on a cell without end.
            throw TextErrors.OpenQuote(file, fault);
        }
    }

    // A recorder that was stopped in mid-line leaves a line without an end and with too few columns.
    private static bool IsTorn(Stream whole, long end, TextSample sample, TextLayout layout)
    {
        if (end == whole.Length || layout.Rows.Length < 2)
        {
            return false;
        }

        string rest = WholeLines.Rest(whole, end, sample.Encoding);
        return rest.Trim().Length > 0 && layout.Dialect.Split(rest).Count < layout.Columns;
    }

    private static void RefuseEventsTable(TextLayout layout, string file)
    {
        bool Has(string name) => layout.Header.Contains(name, StringComparer.OrdinalIgnoreCase);
        if (Has("onset") && Has("duration"))
        {
            throw TextErrors.IsEventsTable(file, layout.HeaderLine);
        }
    }
}
