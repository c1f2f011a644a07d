using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Excerpts;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Checks the exclusions of a recording against the samples in a bundle.</summary>
/// <param name="result">The result in the bundle, with the decisions about it.</param>
/// <param name="criteria">The limits in force.</param>
/// <param name="facts">What windows need of their channels; null when the bundle has none of this recording.</param>
/// <param name="excerptOf">The samples of a channel around a trial; null when there are none.</param>
/// <param name="isOmitted">Whether the index says that the samples of a channel around a trial could not be taken.</param>
internal sealed class ExclusionCheck(
    RecordingResult result, AuditCriteria criteria, ImmutableArray<ChannelFacts>? facts, Func<string, int, Excerpt?> excerptOf, Func<string, int, bool> isOmitted)
{
    /// <summary>Checks one.</summary>
    public ExclusionOutcome Of(Exclusion exclusion, CancellationToken cancel)
    {
        if (exclusion.Trial is not { } number)
        {
            return new ExclusionOutcome(exclusion, ExclusionState.NotCheckable, "it is about the whole channel");
        }

        ChannelResult channel = result.Channels.Single(one => string.Equals(one.Name, exclusion.Channel, StringComparison.Ordinal));
        CellResult cell = channel.Cells.Single(one => one.Trial == number);
        Trial trial = result.Trials.Single(one => one.Number == number);
        if (facts?.FirstOrDefault(one => string.Equals(one.Name, exclusion.Channel, StringComparison.Ordinal)) is not { } own
            || excerptOf(exclusion.Channel, number) is not { } excerpt)
        {
            return isOmitted(exclusion.Channel, number)
                ? new ExclusionOutcome(exclusion, ExclusionState.NotCheckable, "its samples are left out: too long a window, or too high or low a rate, for a bundle")
                : new ExclusionOutcome(exclusion, ExclusionState.Differs, "its samples are not in the bundle");
        }

        ImmutableArray<MeasureValue> measured = ExcerptMeasures.Of(own, excerpt, trial.WindowFromS, trial.WindowToS, cancel);
        ImmutableArray<MeasureValue> before = trial.BaselineFromS is { } from ? ExcerptMeasures.Of(own, excerpt, from, trial.OnsetS, cancel) : [];
        string[] others = [.. Others(cell.Measures, measured, string.Empty), .. Others(cell.BaselineMeasures, before, " of the baseline"), .. Pairs(channel, number, trial, cancel)];
        return others.Length > 0
            ? new ExclusionOutcome(exclusion, ExclusionState.Differs, others[0] + (others.Length > 1 ? $" (and {(others.Length - 1).Plain()} more)" : string.Empty))
            : Judged(exclusion, channel, cell, own, measured, before);
    }

    private ExclusionOutcome Judged(
        Exclusion exclusion, ChannelResult channel, CellResult cell, ChannelFacts own, ImmutableArray<MeasureValue> measured, ImmutableArray<MeasureValue> before)
    {
        FindingCheck[] checks =
        [
            .. cell.Findings.Where(finding => finding.Grade == cell.Verdict && finding.Grade != Grade.Pass)
                .Select(finding => FindingCheck.Of(finding, criteria, own.Scoring, finding.InBaseline ? before : measured)),
        ];
        string numbers = FormattableString.Invariant($"{Compared(cell)} numbers as in the audit");
        if (Array.Find(checks, check => check.IsConfirmed == false) is { } wrong)
        {
            return new ExclusionOutcome(exclusion, ExclusionState.Differs, wrong.Text);
        }

        if (exclusion.Final > exclusion.Computed)
        {
            return new ExclusionOutcome(exclusion, ExclusionState.Confirmed, $"a person's decision over {VerdictWords.Code(exclusion.Computed)}, replayed from the ledger; {numbers}");
        }

        if (checks.Any(check => check.IsConfirmed == true))
        {
            return new ExclusionOutcome(exclusion, ExclusionState.Confirmed, string.Join("; ", checks.Where(check => check.IsConfirmed == true).Select(check => check.Text)) + "; " + numbers);
        }

        return checks.Length > 0 || IsCarried(channel, cell)
            ? new ExclusionOutcome(exclusion, ExclusionState.NotCheckable, string.Join("; ", checks.Select(check => check.Text).DefaultIfEmpty("it rests on the whole recording")) + "; " + numbers)
            : new ExclusionOutcome(exclusion, ExclusionState.Differs, $"no finding has the verdict {VerdictWords.Code(cell.Verdict)}");
    }

    // A collapse and a swap hold throughout and stand with the channel; a trial without anything to assess has no finding.
    private static bool IsCarried(ChannelResult channel, CellResult cell) =>
        channel.Findings.Any(finding => cell.Reasons.Contains(finding.Reason, StringComparer.Ordinal)) || cell.Reasons.Contains(ReasonCode.UnusableInput, StringComparer.Ordinal);

    private static int Compared(CellResult cell) => cell.Measures.Concat(cell.BaselineMeasures).Count(measure => measure.Value.Value is not null && ExcerptMeasures.IsOfWindowAlone(measure.Value.Measure));

    private static IEnumerable<string> Others(ImmutableArray<GradedMeasure> stored, ImmutableArray<MeasureValue> measured, string of)
    {
        Dictionary<string, double?> again = measured.ToDictionary(value => value.Measure, value => value.Value, StringComparer.Ordinal);
        return stored.Select(measure => measure.Value)
            .Where(value => again.TryGetValue(value.Measure, out double? now) && now != value.Value)
            .Select(value => $"{value.Measure}{of} is {Word(value.Value)} in the audit and {Word(again[value.Measure])} in the samples");
    }

    private IEnumerable<string> Pairs(ChannelResult channel, int number, Trial trial, CancellationToken cancel)
    {
        foreach (PairResult pair in result.Pairs.Where(pair => Names(pair, channel.Name)))
        {
            PairRow row = pair.Rows.FirstOrDefault(one => string.Equals(one.Trial, number.Plain(), StringComparison.Ordinal));
            if (row.Rho is null || Part(pair.ChannelA, number) is not { } a || Part(pair.ChannelB, number) is not { } b)
            {
                continue;
            }

            PairReading? again = ExcerptMeasures.OfPair(a, b, trial.WindowFromS, trial.WindowToS, cancel);
            if (again is not { } now || (now.Rho, now.RhoHigh, now.Distance, now.Coherence, now.GainAb, now.GainBa) != (row.Rho, row.RhoHigh, row.Distance, row.Coherence, row.GainAb, row.GainBa))
            {
                yield return $"rho of {OneLine.Of(pair.ChannelA)} and {OneLine.Of(pair.ChannelB)} is {Word(row.Rho)} in the audit and {Word(again?.Rho)} in the samples";
            }
        }
    }

    private static bool Names(PairResult pair, string channel) =>
        string.Equals(pair.ChannelA, channel, StringComparison.Ordinal) || string.Equals(pair.ChannelB, channel, StringComparison.Ordinal);

    private (ChannelFacts Facts, Excerpt Excerpt)? Part(string channel, int trial) =>
        facts?.FirstOrDefault(one => string.Equals(one.Name, channel, StringComparison.Ordinal)) is { } own && excerptOf(channel, trial) is { } excerpt ? (own, excerpt) : null;

    private static string Word(double? value) => value is { } number ? OneLine.Number(number) : "not there";
}
