using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>Where the table is in a text file and how it is written.</summary>
internal sealed record TextLayout
{
    /// <summary>Separator and decimal sign.</summary>
    public required TextDialect Dialect { get; init; }

    /// <summary>Columns of the table, the empty one behind a trailing separator not counted.</summary>
    public required int Columns { get; init; }

    /// <summary>Lines before the header, blank ones left out.</summary>
    public required ImmutableArray<string> Preamble { get; init; }

    /// <summary>The labels, or empty when the file has no header.</summary>
    public required ImmutableArray<string> Header { get; init; }

    /// <summary>Line of the header from 1, or 0.</summary>
    public required int HeaderLine { get; init; }

    /// <summary>The cells of the unit row, or empty.</summary>
    public required ImmutableArray<string> Units { get; init; }

    /// <summary>Line of the first row of numbers from 1.</summary>
    public required int DataLine { get; init; }

    /// <summary>The rows of the sample, split, those with the wrong number of cells left out.</summary>
    public required ImmutableArray<ImmutableArray<string>> Rows { get; init; }
}
