using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Bids;

/// <summary>The columns of the exported tables, in order.</summary>
public static class BidsColumns
{
    private static readonly (string, string)[] Grades =
    [
        ("pass", "can be scored"),
        ("questionable", "a person should look; status is n/a"),
        ("reject", "should not be scored; status is bad"),
    ];

    private const string Escaped = "; one that a spreadsheet would run as a formula has an apostrophe in front";

    private static readonly (string, string)[] Statuses = [("good", "quality_grade is pass"), ("bad", "quality_grade is reject")];

    /// <summary>Names of the columns of <c>*_desc-quality_channels.tsv</c>.</summary>
    public static ImmutableArray<string> Channels { get; } = [.. OfChannels().Select(column => column.Name)];

    /// <summary>Names of the columns of <c>*_desc-quality_events.tsv</c>.</summary>
    public static ImmutableArray<string> Events { get; } = [.. OfEvents().Select(column => column.Name)];

    /// <summary>Columns of the channels table; BIDS asks for name, type and units first.</summary>
    internal static ImmutableArray<BidsColumn> OfChannels() =>
    [
        new("name", "Label of the channel in the recording, as in the channels table of the source data set" + Escaped),
        new("type", "Type of the channel; only channels of surface EMG are audited") { Levels = [("EMG", "electromyography")] },
        new("units", "Always n/a: the table holds no samples of the channel"),
        new("sampling_frequency", "Samples a second") { Unit = "Hz" },
        new("status", "Whether the channel can be scored; n/a when a person should look") { Levels = Statuses },
        Description("channel"),
        new("site", "Name of the recording site in the audit's setup; the label again when the setup gives none"),
        .. Grading("channel"),
        new("trials", "Number of trials, rest and tasks included"),
        new("trials_pass", "Trials whose computed grade is pass"),
        new("trials_questionable", "Trials whose computed grade is questionable"),
        new("trials_reject", "Trials whose computed grade is reject"),
    ];

    /// <summary>Columns of the events table; BIDS asks for onset and duration first.</summary>
    internal static ImmutableArray<BidsColumn> OfEvents() =>
    [
        new("onset", "Onset of the trial, from the first stored sample") { Unit = "s" },
        new("duration", "Duration of the trial") { Unit = "s" },
        new("trial_type", "Label of the trial, as in the source data set" + Escaped),
        new("channel", "Label of the channel that the row is about: a trial has one row for each channel"),
        new("trial", "Number of the trial from 1, by onset, rest and tasks included"),
        new("status", "Whether the trial of the channel can be scored; n/a when a person should look") { Levels = Statuses },
        Description("trial of the channel"),
        .. Grading("trial of the channel"),
    ];

    private static BidsColumn Description(string what) =>
        new("status_description", $"Why the {what} is bad or questionable: the reasons in words with their codes, worst first, and where a person decided the reason that was given; n/a when there is none");

    private static IEnumerable<BidsColumn> Grading(string what) =>
    [
        new("quality_grade", $"Grade of the {what} after decisions of persons: one step finer than status") { Levels = Grades },
        new("computed_grade", $"Grade of the {what} by rule, before decisions") { Levels = Grades },
        new("reasons", $"Reason codes of the computed grade joined by ;, worst first. {Codes}"),
        new("not_assessed", $"Reason codes of what could not be judged, joined by ;: not the same as good. {Codes}"),
    ];

    // Levels are for whole cells, and a cell may hold several codes.
    private static string Codes => $"Codes: {string.Join(", ", ReasonCode.All.Select(code => $"{code} ({ReasonWords.For(code).Name})"))}";
}
