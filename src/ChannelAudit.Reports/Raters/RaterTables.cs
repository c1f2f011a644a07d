using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>The tables of <c>raters --out</c>.</summary>
public static class RaterTables
{
    /// <summary>Columns of <c>agreement.tsv</c>.</summary>
    public static ImmutableArray<string> AgreementColumns { get; } =
    [
        "counted", "rater_a", "rater_b", "labels", "agreement", "kappa", "low", "high", "weighted_kappa", "weighted_low", "weighted_high",
        "pass_pass", "pass_questionable", "pass_reject", "questionable_pass", "questionable_questionable", "questionable_reject",
        "reject_pass", "reject_questionable", "reject_reject", "undefined",
    ];

    /// <summary>Columns of <c>detection.tsv</c>.</summary>
    public static ImmutableArray<string> DetectionColumns { get; } =
    [
        "counted", "against", "called", "true", "hits", "misses", "false_alarms", "clears",
        "sensitivity", "sensitivity_low", "sensitivity_high", "specificity", "specificity_low", "specificity_high",
    ];

    /// <summary>Columns of <c>limits.tsv</c>.</summary>
    public static ImmutableArray<string> LimitColumns { get; } =
    [
        "counted", "measure", "unit", "bad_when", "reject", "other", "left_out", "area", "limit", "limit_sensitivity", "limit_specificity",
        "best", "best_sensitivity", "best_specificity", "note",
    ];

    /// <summary>Columns of <c>curves.tsv</c>.</summary>
    public static ImmutableArray<string> CurveColumns { get; } = ["counted", "measure", "limit", "sensitivity", "specificity"];

    /// <summary>All tables by name, as UTF-8 bytes.</summary>
    public static ImmutableArray<(string Name, byte[] Bytes)> All(RaterStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return
        [
            ("agreement.tsv", Table(AgreementColumns, study, (table, set) => Each(set.Pairs, pair => WritePair(table, set, pair)))),
            ("detection.tsv", Table(DetectionColumns, study, (table, set) => Each(set.Detections, one => WriteDetection(table, set, one)))),
            ("limits.tsv", Table(LimitColumns, study, (table, set) => Each(set.Curves, curve => WriteLimits(table, set, curve)))),
            ("curves.tsv", Table(CurveColumns, study, (table, set) => Each(set.Curves, curve => WriteCurve(table, set, curve)))),
        ];
    }

    /// <summary>The word of a kind.</summary>
    public static string Code(RatedKind kind) => kind == RatedKind.Trials ? "trials" : "channels";

    private static byte[] Table(ImmutableArray<string> columns, RaterStudy study, Action<TsvWriter, RatedSet> write)
    {
        using TsvWriter table = new(columns);
        foreach (RatedSet set in study.Sets)
        {
            write(table, set);
        }

        return table.ToArray();
    }

    private static void Each<T>(ImmutableArray<T> rows, Action<T> write)
    {
        foreach (T row in rows)
        {
            write(row);
        }
    }

    private static void WritePair(TsvWriter table, RatedSet set, RaterPair pair)
    {
        KappaResult plain = pair.Table.Kappa();
        KappaResult weighted = pair.Table.Kappa(KappaWeights.Linear);
        table.Word(Code(set.Kind));
        table.Label(pair.A);
        table.Label(pair.B);
        table.Count((int)plain.Count);
        table.Number(plain.Observed);
        foreach (double? number in new[] { plain.Kappa, plain.Low, plain.High, weighted.Kappa, weighted.Low, weighted.High })
        {
            table.Number(number);
        }

        for (int cell = 0; cell < pair.Table.Answers * pair.Table.Answers; cell++)
        {
            table.Count((int)pair.Table.Count(cell / pair.Table.Answers, cell % pair.Table.Answers));
        }

        table.Label(plain.Undefined);
        table.EndRow();
    }

    private static void WriteDetection(TsvWriter table, RatedSet set, RaterDetection one)
    {
        table.Word(Code(set.Kind));
        table.Label(one.Against);
        table.Word(From(one.CalledFrom));
        table.Word(From(one.TrueFrom));
        table.Count(one.Counts.Hits);
        table.Count(one.Counts.Misses);
        table.Count(one.Counts.FalseAlarms);
        table.Count(one.Counts.Clears);
        foreach (Share share in new[] { new Share(one.Counts.Hits, one.Counts.Positives), new Share(one.Counts.Clears, one.Counts.Negatives) })
        {
            table.Number(share.Value);
            table.Number(share.Interval?.Low);
            table.Number(share.Interval?.High);
        }

        table.EndRow();
    }

    /// <summary>A grade and worse as a word.</summary>
    internal static string From(Grade grade) => grade == Grade.Reject ? "reject" : "not-pass";

    private static void WriteLimits(TsvWriter table, RatedSet set, MeasureAgainstPeople curve)
    {
        table.Word(Code(set.Kind));
        table.Word(curve.Measure.Name);
        table.Word(curve.Measure.Unit);
        table.Word(curve.Measure.Sense switch
        {
            LimitSense.AtMost => "at-most",
            LimitSense.AtLeastMagnitude => "at-least-magnitude",
            _ => "at-least",
        });
        table.Count(curve.Labels.Reject);
        table.Count(curve.Labels.Other);
        table.Count(curve.LeftOut);
        table.Number(curve.Area);
        table.Number(curve.LimitInForce);
        table.Number(curve.AtLimitInForce?.Sensitivity);
        table.Number(curve.AtLimitInForce?.Specificity);
        table.Number(curve.Best?.Limit);
        table.Number(curve.Best?.Counts.Sensitivity);
        table.Number(curve.Best?.Counts.Specificity);
        table.Label(RaterWords.Note(curve));
        table.EndRow();
    }

    private static void WriteCurve(TsvWriter table, RatedSet set, MeasureAgainstPeople curve)
    {
        foreach ((double? limit, DetectionCounts counts) in curve.Points)
        {
            table.Word(Code(set.Kind));
            table.Word(curve.Measure.Name);
            table.Number(limit);
            table.Number(counts.Sensitivity);
            table.Number(counts.Specificity);
            table.EndRow();
        }
    }
}
