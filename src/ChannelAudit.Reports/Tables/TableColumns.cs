using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Reports.Tables;

/// <summary>The columns of every table, in order.</summary>
public static class TableColumns
{
    /// <summary>Columns of <c>verdicts.tsv</c>.</summary>
    public static ImmutableArray<string> Verdicts { get; } =
        ["recording", "channel", "trial", "condition", "onset", "duration", "verdict", "reasons", "not_assessed", "final"];

    /// <summary>Columns of <c>channels.tsv</c>: the verdict, then every measure that a whole recording can have.</summary>
    public static ImmutableArray<string> Channels { get; } =
    [
        "recording", "channel", "verdict", "reasons", "not_assessed", "final",
        "trials", "trials_pass", "trials_questionable", "trials_reject", "impedance",
        .. MeasureCatalog.OfWholeRecordings.Select(measure => measure.Name),
    ];

    /// <summary>Columns of <c>conditions.tsv</c>.</summary>
    public static ImmutableArray<string> Conditions { get; } =
    [
        "recording", "participant", "channel", "condition", "trials", "pass", "questionable", "reject", "usable", "minimum", "enough", "group",
    ];

    /// <summary>Columns of <c>measures.tsv</c>.</summary>
    public static ImmutableArray<string> Measures { get; } =
        ["channel", "trial", "measure", "value", "unit", "grade", "questionable", "reject", "note"];

    /// <summary>Columns of <c>pairs.tsv</c>.</summary>
    public static ImmutableArray<string> Pairs { get; } =
        ["channel_a", "channel_b", "trial", "rho", "rho_high", "distance", "coherence", "gain_ab", "gain_ba"];

    /// <summary>Columns of <c>sensitivity.tsv</c>.</summary>
    public static ImmutableArray<string> Sensitivity { get; } =
    [
        "reason", "factor", "trials", "trials_pass", "trials_questionable", "trials_reject", "channels", "channels_pass", "channels_questionable", "channels_reject",
    ];
}
