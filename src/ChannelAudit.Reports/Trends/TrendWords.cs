using System.Globalization;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Signals.Trends;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary>What changed over time, in words. A person is never among the causes.</summary>
public static class TrendWords
{
    private const double Fold = 2.5;

    /// <summary>The word of a kind of subject in tables.</summary>
    public static string Code(TrendBy by) => by switch
    {
        TrendBy.Archive => "all",
        TrendBy.Lab => "lab",
        TrendBy.Amplifier => "amplifier",
        TrendBy.Site => "site",
        _ => "electrode",
    };

    /// <summary>The word of a kind of change in tables.</summary>
    public static string Code(ChangeKind kind) => kind switch
    {
        ChangeKind.Step => "step",
        ChangeKind.Drift => "drift",
        _ => "episode",
    };

    /// <summary>A measure as people call it.</summary>
    public static string Name(TrendMeasure measure) =>
        measure == TrendMeasure.NotPassed ? "channels not passed"
        : measure == TrendMeasure.Rest ? "noise floor"
        : measure == TrendMeasure.Mains ? "mains"
        : measure == TrendMeasure.Bridge ? "joined channels"
        : measure == TrendMeasure.Impedance ? "impedance"
        : measure == TrendMeasure.Contact ? "impedance of the contact"
        : "fall of the impedance before the session";

    /// <summary>A subject as people call it.</summary>
    /// <param name="report">Says whether there are several labs.</param>
    /// <param name="line">The line.</param>
    public static string Name(TrendReport report, TrendLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string[] electrodes = [.. line.Same.Where(same => same.By == TrendBy.Electrode).Select(same => same.Name)];
        string name = line.Subject.By switch
        {
            TrendBy.Archive => "all recordings",
            TrendBy.Lab => line.Subject.Lab is null ? "the lab without a name" : $"lab {line.Subject.Name}",
            TrendBy.Electrode when electrodes.Length > 0 => $"electrodes {And([line.Subject.Name, .. electrodes])}, always worn together",
            _ => $"{Code(line.Subject.By)} {line.Subject.Name}",
        };
        string where = line.Subject.By > TrendBy.Lab && HasLabs(report) ? $" of lab {line.Subject.Lab ?? TrendSubjects.UnnamedLab}" : string.Empty;
        string only = line.Subject.By < TrendBy.Electrode && line.Same.Length > 0
            ? $" (or {And([.. line.Same.Select(same => $"{Code(same.By)} {same.Name}")])}: they have the same recordings, so which it is cannot be told)"
            : string.Empty;
        return name + where + only;
    }

    /// <summary>A story in a sentence: what, since when, whether others too, and what to do.</summary>
    public static string Sentence(TrendReport report, TrendStory story)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(story);
        TrendFinding[] told = [.. story.Findings.DistinctBy(finding => finding.Measure)];
        string first = Change(told[0]);
        string more = told.Length > 1 ? $"; also {string.Join(", ", told[1..].Select(finding => $"{Name(finding.Measure)} {Size(finding)}"))}" : string.Empty;
        string name = Name(report, told[0].Line);
        return $"{char.ToUpperInvariant(name[0])}{name[1..]}: {first}{Others(report, story)}{more}: {ToDo(story)}.";
    }

    /// <summary>A change: of what, how much, when.</summary>
    public static string Change(TrendFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return $"{Name(finding.Measure)} {Size(finding)} {Time(finding)}";
    }

    /// <summary>What it is looked at for, in an odd corner of a lab's life: what a person may do about it.</summary>
    public static string ToDo(TrendStory story)
    {
        ArgumentNullException.ThrowIfNull(story);
        TrendFinding main = story.Findings.FirstOrDefault(finding => finding.Measure != TrendMeasure.NotPassed) ?? story.Findings[0];
        bool isOver = main.Kind == ChangeKind.Episode;
        return (story.Subject.By, story.IsWorse) switch
        {
            (_, null) => "see what was done differently",
            (TrendBy.Electrode, false) => "what was done to it helped",
            (TrendBy.Electrode, true) => isOver ? "look at it before it is used again" : "clean or replace it, as its maker says",
            (_, false) => isOver ? "find out what was better then" : "keep what was changed then",
            (TrendBy.Amplifier, true) => isOver ? "find out what was near it then" : "have amplifier and leads tested by qualified staff",
            (TrendBy.Site, true) when main.Measure == TrendMeasure.Bridge => "less gel, or electrodes further apart, as your protocol allows",
            (TrendBy.Site, true) => "look at how this site is prepared and where its leads run",
            _ when main.Measure == TrendMeasure.Mains => isOver
                ? "find out what was switched on or moved near the chair then, before it comes back"
                : "look for what was switched on or moved near the chair then; wiring is for qualified staff",
            _ when main.Measure == TrendMeasure.Bridge => "less gel, or electrodes further apart, as your protocol allows",
            _ => isOver ? "find out what was different then" : "ask what changed then in electrodes, gel or preparation",
        };
    }

    /// <summary>A value of a measure.</summary>
    public static string Value(TrendMeasure measure, double value)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return measure.Scale == TrendScale.Share ? Percent(value)
            : string.Equals(measure.Unit, "kohm", StringComparison.Ordinal) ? $"{Quantities.Short(value)} k\u03A9"
            : Quantities.WithUnit(value, measure.Unit);
    }

    /// <summary>A month: <c>May 2025</c>.</summary>
    public static string Month(DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Texts in a row.</summary>
    public static string And(string[] texts) => texts is [.. var all, var last] && all.Length > 0 ? $"{string.Join(", ", all)} and {last}" : texts[0];

    /// <summary>A share.</summary>
    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %");

    private static bool HasLabs(TrendReport report) => report.Subjects.Count(subject => subject.By == TrendBy.Lab) > 1;

    private static string Size(TrendFinding finding)
    {
        double ratio = finding.After / finding.Before;
        if (finding.Measure.Scale != TrendScale.Level)
        {
            return $"{(finding.IsUp ? "up" : "down")} from {Value(finding.Measure, finding.Before)} to {Value(finding.Measure, finding.After)}";
        }

        return ratio switch
        {
            >= Fold => string.Create(CultureInfo.InvariantCulture, $"{ratio:0.0} times as high"),
            >= 1 => string.Create(CultureInfo.InvariantCulture, $"up {100 * (ratio - 1):0} %"),
            _ => string.Create(CultureInfo.InvariantCulture, $"down {100 * (1 - ratio):0} %"),
        };
    }

    private static string Time(TrendFinding finding)
    {
        string from = Month(finding.From);
        if (finding.To is not { } end)
        {
            return finding.Kind == ChangeKind.Drift ? $"since {from}, slowly and still going on" : $"since {from}";
        }

        // The week after it is told: the last day of it is meant.
        string to = Month(end.AddDays(-1));
        string span = string.Equals(from, to, StringComparison.Ordinal) ? $"in {from}" : $"from {from} to {to}";
        return finding.Kind == ChangeKind.Episode ? $"{span}, then as before" : $"slowly {span}, and has stayed there";
    }

    private static string Others(TrendReport report, TrendStory story)
    {
        TrendFinding main = story.Findings[0];
        TrendBy by = story.Subject.By;
        bool hasOthers = report.Subjects.Any(subject => subject.By == by && subject != story.Subject
            && (by == TrendBy.Lab || string.Equals(subject.Lab, story.Subject.Lab, StringComparison.Ordinal)));
        if (by == TrendBy.Archive || !hasOthers)
        {
            return string.Empty;
        }

        string[] also =
        [
            .. report.Stories.Where(other => other != story && other.Subject.By == by && other.PartOf is null)
                .Where(other => other.Findings.Any(finding => finding.Measure == main.Measure && finding.IsBeside(main) && finding.IsUp == main.IsUp))
                .Select(other => other.Subject.Name),
        ];
        return also.Length == 0 ? $", no other {Code(by)}'s" : $", as at {Code(by)} {And(also)}";
    }
}
