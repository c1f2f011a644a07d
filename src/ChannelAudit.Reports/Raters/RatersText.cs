using System.Globalization;
using System.Text;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Raters;

/// <summary>People's labels against the criteria and each other as text.</summary>
public static class RatersText
{
    private const int MostCurves = 12;
    private const int MostUnmatched = 20;

    /// <summary>The text.</summary>
    /// <param name="study">What was found.</param>
    /// <param name="source">Where the labels come from, in words.</param>
    public static string Render(RaterStudy study, string source)
    {
        ArgumentNullException.ThrowIfNull(study);
        StringBuilder text = new();
        text.Append("Audit:  ").Append(TerminalText.Clean(study.Audit.Folder)).Append('\n');
        text.Append("Labels: ").Append(TerminalText.Clean(source)).Append(", ").Append(Quantities.Many(study.Labels, "label"))
            .Append(" of ").Append(Quantities.Many(study.Raters.Length, "rater")).Append('\n');
        if (study.Replaced > 0)
        {
            text.Append("        ").Append(Quantities.Many(study.Replaced, "label")).Append(" replaced by a later one of the same rater\n");
        }

        AddUnmatched(text, study);
        foreach (RatedSet set in study.Sets)
        {
            text.Append('\n').Append(set.Kind == RatedKind.Trials ? Quantities.Many(set.Count, "trial") : Quantities.Many(set.Count, "whole channel"))
                .Append(" with a label, from ").Append(Quantities.Many(set.Recordings, "recording"))
                .Append(". Labels of one recording are not independent: true intervals are wider.\n");
            AddAgreement(text, set);
            AddDetection(text, set);
            AddCurves(text, set);
        }

        return text.ToString();
    }

    private static void AddUnmatched(StringBuilder text, RaterStudy study)
    {
        if (study.Unmatched.IsEmpty)
        {
            return;
        }

        text.Append('\n').Append(Quantities.Many(study.Unmatched.Length, "label")).Append(" could not be matched\n");
        foreach (var (label, cause) in study.Unmatched.Take(MostUnmatched))
        {
            text.Append("  line ").Append(label.Place.Line.Plain()).Append(", ").Append(TerminalText.Clean($"{label.Rater}: {cause}")).Append('\n');
        }

        if (study.Unmatched.Length > MostUnmatched)
        {
            text.Append("  and ").Append((study.Unmatched.Length - MostUnmatched).Plain()).Append(" more\n");
        }
    }

    private static void AddAgreement(StringBuilder text, RatedSet set)
    {
        text.Append("\n  Agreement, Cohen's kappa      labels   agree   kappa (95 % interval)    linear weights\n");
        foreach (RaterPair pair in set.Pairs)
        {
            KappaResult plain = pair.Table.Kappa();
            text.Append("  ").Append(Name($"{pair.A} with {pair.B}", 29)).Append(plain.Count.ToString(CultureInfo.InvariantCulture).PadLeft(7));
            text.Append(plain.Observed is { } observed ? string.Create(CultureInfo.InvariantCulture, $"{100 * observed,6:F0} %") : "     n/a");
            text.Append("   ").Append(plain.Undefined is { } why ? $"not defined: {why}" : $"{Kappa(plain),-24} {Kappa(pair.Table.Kappa(KappaWeights.Linear))}").Append('\n');
        }
    }

    private static string Kappa(KappaResult result) => result switch
    {
        { Kappa: null } => "not defined",
        { Low: null } => string.Create(CultureInfo.InvariantCulture, $"{result.Kappa:F2} (no interval)"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{result.Kappa:F2} ({result.Low:F2} to {result.High:F2})"),
    };

    private static void AddDetection(StringBuilder text, RatedSet set)
    {
        text.Append("\n  Criteria against people   computed    label     sensitivity                        specificity\n");
        foreach (RaterDetection one in set.Detections)
        {
            string calls = $"{RaterTables.From(one.CalledFrom),-11} {RaterTables.From(one.TrueFrom),-9} ";
            text.Append("  ").Append(Name(one.Against, 25)).Append(' ').Append(calls)
                .Append(new Share(one.Counts.Hits, one.Counts.Positives).ToString().PadRight(35)).Append(new Share(one.Counts.Clears, one.Counts.Negatives)).Append('\n');
        }

        if (set.Raters.Length > 1)
        {
            text.Append("  ").Append(RatedSet.People).Append(": the middle of the raters' labels");
            text.Append(set.Undecided == 0 ? "\n" : $"; {set.Undecided.Plain()} without one, left out\n");
        }
    }

    private static void AddCurves(StringBuilder text, RatedSet set)
    {
        if (set.Curves.IsEmpty)
        {
            text.Append("\n  No curve of a measure: people reject all of them, or none.\n");
            return;
        }

        text.Append("\n  Each measure alone against people's reject: area, then sensitivity/specificity\n");
        text.Append("  measure             area   limit in force            would agree best\n");
        foreach (MeasureAgainstPeople curve in set.Curves.Take(MostCurves))
        {
            text.Append("  ").Append(curve.Measure.Name.PadRight(18)).Append(curve.Area.ToString("F2", CultureInfo.InvariantCulture).PadLeft(6)).Append("   ")
                .Append(At(curve.LimitInForce, curve.AtLimitInForce, curve.Measure.Unit, "none").PadRight(26))
                .Append(curve.Best is { } best ? At(best.Limit, best.Counts, curve.Measure.Unit, string.Empty) : "not named").Append('\n');
        }

        if (set.Curves.Length > MostCurves)
        {
            text.Append("  and ").Append((set.Curves.Length - MostCurves).Plain()).Append(" more; --out DIR has all of them\n");
        }

        AddCaution(text, set);
    }

    private static void AddCaution(StringBuilder text, RatedSet set)
    {
        MeasureAgainstPeople most = set.Curves.MaxBy(curve => curve.Labels.Reject + curve.Labels.Other)!;
        if (!most.HasEnough)
        {
            text.Append("  In this table ").Append(RaterWords.TooFew(most)).Append(".\n");
        }

        if (set.Curves.Any(curve => curve.Best is not null))
        {
            text.Append("  A limit that agrees best looks better on these labels than it is: it was chosen on them. Judge it on\n")
                .Append("  other recordings before it is used, and freeze it before you look. It rests on ").Append(most.Labels.Reject.Plain()).Append(" labels reject and ")
                .Append(most.Labels.Other.Plain()).Append(" other.\n");
        }

        text.Append("  A finding may need several measures at once: a limit here is that of the one measure alone.\n");
    }

    private static string At(double? limit, DetectionCounts? counts, string unit, string none) => limit is { } value && counts is { Sensitivity: { } found, Specificity: { } clear }
        ? string.Create(CultureInfo.InvariantCulture, $"{Quantities.WithUnit(value, unit)}: {found:F2}/{clear:F2}")
        : none;

    private static string Name(string name, int columns) => TerminalText.Fit(TerminalText.Clean(name), columns);
}
