using System.Collections.Immutable;

namespace ChannelAudit.Reports.Typed;

/// <summary>The columns of every typed table, in the order and under the names of the table that it stands beside.</summary>
internal static class TypedColumns
{
    // The measure decides, and the column unit of the row says it.
    private const string OfItsRow = "that of unit";

    /// <summary>Columns of <c>verdicts.parquet</c>.</summary>
    public static ImmutableArray<TypedColumn> Verdicts { get; } =
    [
        new("recording"), new("channel"), new("trial", CellKind.Whole), new("condition"), new("onset", CellKind.Number, "s"), new("duration", CellKind.Number, "s"),
        new("verdict"), new("reasons"), new("not_assessed"), new("final"),
    ];

    /// <summary>Columns of <c>measures.parquet</c>.</summary>
    public static ImmutableArray<TypedColumn> Measures { get; } =
    [
        new("recording"), new("channel"), new("trial"), new("measure"), new("value", CellKind.Number, OfItsRow), new("unit"), new("grade"),
        new("questionable", CellKind.Number, OfItsRow), new("reject", CellKind.Number, OfItsRow), new("note"),
    ];

    /// <summary>Columns of <c>pairs.parquet</c>.</summary>
    public static ImmutableArray<TypedColumn> Pairs { get; } =
    [
        new("recording"), new("channel_a"), new("channel_b"), new("trial"),
        .. new[] { "rho", "rho_high", "distance", "coherence", "gain_ab", "gain_ba" }.Select(name => new TypedColumn(name, CellKind.Number, "1")),
    ];
}
