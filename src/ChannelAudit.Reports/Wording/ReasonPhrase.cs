using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>A reason of a channel in words with its key number: <c>50 Hz mains 14.2 µV, 344 of 360 trials</c>.</summary>
public static class ReasonPhrase
{
    /// <summary>All reasons of a channel, worst first, then those that only trials have, the commonest first.</summary>
    public static ImmutableArray<string> All(RecordingResult recording, ChannelResult channel)
    {
        IEnumerable<string> onlyInTrials = channel.Cells
            .SelectMany(cell => cell.Reasons)
            .Where(reason => !channel.Reasons.Contains(reason, StringComparer.Ordinal))
            .GroupBy(reason => reason, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count())
            .Select(group => group.Key);
        return [.. channel.Reasons.Concat(onlyInTrials).Select(reason => Of(recording, channel, reason))];
    }

    /// <summary>The phrase; without a finding that shows the number, only the words and the trials.</summary>
    public static string Of(RecordingResult recording, ChannelResult channel, string reason)
    {
        Finding? worst = Worst(FindingsOf(channel, reason));
        int trials = channel.Cells.Count(cell => cell.Reasons.Contains(reason, StringComparer.Ordinal));
        string what = worst is null ? Bare(recording, reason) : Of(recording, channel, worst);
        return trials == 0 ? what : $"{what}, {trials.Plain()} of {Quantities.Many(channel.Cells.Length, "trial")}";
    }

    /// <summary>One finding in words with its key number.</summary>
    public static string Of(RecordingResult recording, ChannelResult channel, Finding finding)
    {
        if (string.Equals(finding.Reason, ReasonCode.UnusableInput, StringComparison.Ordinal) && finding.Evidence.IsEmpty)
        {
            // What is wrong with the input is no number but says itself.
            return finding.Text;
        }

        string name = NameWithPartner(recording, channel, finding);
        return Key(finding) is { } key && !IsShareOfTrials(finding) ? WithNumber(name, key) : name;
    }

    /// <summary>All findings of a channel for a reason: those of the whole recording, then those of its trials.</summary>
    public static IEnumerable<Finding> FindingsOf(ChannelResult channel, string reason) => channel.Findings
        .Concat(channel.Cells.SelectMany(cell => cell.Findings))
        .Where(finding => string.Equals(finding.Reason, reason, StringComparison.Ordinal));

    /// <summary>The finding that speaks for all: the worst grade, a measured one rather than the share of bad trials, of the whole recording rather
    /// than of a trial, then the one whose key number is farthest beyond its limit, then the earliest.</summary>
    public static Finding? Worst(IEnumerable<Finding> findings) => findings
        .OrderByDescending(finding => finding.Grade)
        .ThenBy(IsShareOfTrials)
        .ThenBy(finding => finding.Trial.HasValue)
        .ThenByDescending(Excess)
        .ThenBy(finding => finding.FromS)
        .FirstOrDefault();

    /// <summary>The number that says most about a finding, or null when it has none.</summary>
    public static Evidence? Key(Finding finding)
    {
        ImmutableArray<string> keys = ReasonWords.For(finding.Reason).KeyMeasures;
        return keys
            .Select(key => finding.Evidence.FirstOrDefault(evidence => string.Equals(evidence.Measure, key, StringComparison.Ordinal)))
            .FirstOrDefault(evidence => evidence is not null) ?? finding.Evidence.FirstOrDefault();
    }

    /// <summary>Whether a finding only counts bad trials: its number is a share of trials, not the size of what is wrong with them.</summary>
    internal static bool IsShareOfTrials(Finding finding) => finding.CountsTrials;

    private static string Bare(RecordingResult recording, string reason) => string.Equals(reason, ReasonCode.LineNoise, StringComparison.Ordinal)
        ? $"{Quantities.Short(recording.Mains.NominalHz)} Hz mains"
        : ReasonWords.For(reason).Name;

    private static string NameWithPartner(RecordingResult recording, ChannelResult channel, Finding finding)
    {
        string[] others = [.. finding.Channels.Where(name => !string.Equals(name, channel.Name, StringComparison.Ordinal))];
        return string.Equals(finding.Reason, ReasonCode.Bridge, StringComparison.Ordinal) && others.Length > 0
            ? $"{(finding.Grade == Grade.Questionable ? "may be joined" : "joined")} with {string.Join(", ", others)}"
            : string.Equals(finding.Reason, ReasonCode.LeadSwap, StringComparison.Ordinal) && others.Length > 0
                ? Swap(channel, finding, others[0])
                : Bare(recording, finding.Reason);
    }

    // The asked site stands first.
    private static string Swap(ChannelResult channel, Finding finding, string other) =>
        string.Equals(finding.Channels[0], channel.Name, StringComparison.Ordinal) ? $"task answered by {other}" : $"answers the task of {other}";

    // A share says of what.
    private static string WithNumber(string name, Evidence key) => string.Equals(key.Measure, "missing", StringComparison.Ordinal)
        ? $"{Quantities.WithUnit(key.Value, key.Unit)} of samples missing"
        : $"{name} {Number(key)}";

    private static string Number(Evidence evidence) => evidence.Measure switch
    {
        "clipped" or "flat" => $"in {Quantities.WithUnit(evidence.Value, evidence.Unit)} of samples",
        "peak_use" => $"(peaks use {Quantities.WithUnit(evidence.Value, evidence.Unit)} of the range)",
        "clipped_run" or "flat_run" => $"for {Quantities.WithUnit(evidence.Value, evidence.Unit)}",
        "gap" => $"(gap of {Quantities.WithUnit(evidence.Value, evidence.Unit)})",
        "drift_range" => $"over {Quantities.WithUnit(evidence.Value, evidence.Unit)}",
        "headroom" => $"(headroom {Quantities.WithUnit(evidence.Value, evidence.Unit)})",
        "rho_active" or "rho_rest" or "rho_high_rest" => $"(correlation {Quantities.Short(evidence.Value)})",
        "gain_active" => $"(gain {Quantities.Short(evidence.Value)})",
        _ when evidence.Measure.EndsWith("_shift", StringComparison.Ordinal) =>
            $"({(evidence.Value < 0 ? "takes" : "adds")} {Quantities.Short(Math.Abs(evidence.Value))} \u00B5V {(evidence.Value < 0 ? "from" : "to")} the score)",
        _ when evidence.Measure.EndsWith("_effect", StringComparison.Ordinal) => $"({EffectWords.Shift(evidence.Value)} {(evidence.Value < 0 ? "from" : "to")} the score)",
        _ => Quantities.WithUnit(evidence.Value, evidence.Unit),
    };

    /// <summary>How many times its limit the key number of a finding is; 0 when that cannot be said.</summary>
    internal static double Excess(Finding finding)
    {
        if (Key(finding) is not { } key || key.Limit == 0 || key.Value == 0)
        {
            return 0;
        }

        bool fallsBelow = MeasureCatalog.Contains(key.Measure) && MeasureCatalog.Get(key.Measure).Sense == LimitSense.AtMost;
        return Math.Abs(fallsBelow ? key.Limit / key.Value : key.Value / key.Limit);
    }
}
