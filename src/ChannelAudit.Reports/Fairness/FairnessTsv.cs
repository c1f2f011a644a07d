using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Fairness;

/// <summary><c>fairness.tsv</c>: one row a comparison; <c>fairness-shares.tsv</c>: the shares behind them.</summary>
public static class FairnessTsv
{
    /// <summary>The name of the table of comparisons.</summary>
    public const string FileName = "fairness.tsv";

    /// <summary>The name of the table of shares.</summary>
    public const string SharesFileName = "fairness-shares.tsv";

    private const string All = "all";

    /// <summary>Columns of the comparisons.</summary>
    public static ImmutableArray<string> Columns { get; } =
    [
        "by", "counted", "channel", "levels", "highest", "highest_excluded", "highest_of", "highest_share", "lowest", "lowest_excluded", "lowest_of", "lowest_share",
        "difference", "test", "participants", "arrangements", "exact", "p", "smallest_p", "answer", "note",
    ];

    /// <summary>Columns of the shares.</summary>
    public static ImmutableArray<string> SharesColumns { get; } = ["by", "counted", "channel", "level", "participants", "excluded", "of", "share", "low", "high"];

    /// <summary>The comparisons as UTF-8 bytes.</summary>
    public static byte[] Render(FairnessReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        using TsvWriter table = new(Columns);
        foreach (FairnessComparison one in report.Comparisons)
        {
            WriteRow(table, one);
        }

        return table.ToArray();
    }

    /// <summary>The shares as UTF-8 bytes.</summary>
    public static byte[] RenderShares(FairnessReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        using TsvWriter table = new(SharesColumns);
        foreach (ExclusionShare share in report.Shares)
        {
            table.Word(FairnessWords.One(share.By));
            table.Word(FairnessWords.Things(share.Of));
            table.Label(share.Channel ?? All);
            table.Label(share.Level);
            table.Count(share.Participants);
            table.Count(share.Excluded.Count);
            table.Count(share.Excluded.Total);
            table.Number(share.Excluded.Value);
            table.Number(share.Excluded.Interval?.Low);
            table.Number(share.Excluded.Interval?.High);
            table.EndRow();
        }

        return table.ToArray();
    }

    private static void WriteRow(TsvWriter table, FairnessComparison one)
    {
        table.Word(FairnessWords.One(one.By));
        table.Word(FairnessWords.Things(one.Of));
        table.Label(one.Channel ?? All);
        table.Count(one.Levels);
        WriteShare(table, one.Highest);
        WriteShare(table, one.Lowest);
        table.Number(one.Difference);
        table.Word(FairnessWords.Code(one.Test));
        table.Count(one.Units);
        table.Count(one.Arrangements);
        table.Flag(one.IsExact);
        table.Number(one.P);
        table.Number(one.SmallestP);
        table.Word(FairnessWords.Code(one.Answer));
        table.Label(one.Note);
        table.EndRow();
    }

    private static void WriteShare(TsvWriter table, ExclusionShare? share)
    {
        table.Label(share?.Level);
        table.Number(share?.Excluded.Count);
        table.Number(share?.Excluded.Total);
        table.Number(share?.Excluded.Value);
    }
}
