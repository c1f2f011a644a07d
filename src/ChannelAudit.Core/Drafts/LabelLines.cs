using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ChannelAudit.Setup;
using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Drafts;

/// <summary>The part of a draft that lists the labels of events, as candidates for rest and tasks.</summary>
internal static class LabelLines
{
    private const int Most = 40;
    private const int LongestLabel = 60;
    private const int WidestColumn = 40;

    /// <summary>How many trials there are and where they come from.</summary>
    public static string Summary(DraftEvents events)
    {
        string file = OneLine.Of(events.File);
        string from = events.Source == TrialSource.Events ? $"the table {file}" : $"{Word(events.Source)} of {file}";
        return events switch
        {
            { Count: 0 } => "No event was found in the recording or beside it: blocks of 10 s are judged.",
            { Trials: 0 } => Said($"{Number(events.Count, "event")} from {from}, none with a duration: state the window below, or blocks of 10 s are judged."),
            _ when events.Trials == events.Count => Said($"{Number(events.Trials, "trial")} from {from}."),
            _ => Said($"{Number(events.Trials, "trial")} from {from}, and {Number(events.Count - events.Trials, "event")} without a duration: ")
                + "state the window below to make trials of them too.",
        };
    }

    /// <summary>The list of rest with each label as a line of comment.</summary>
    public static void AppendTo(StringBuilder text, ImmutableArray<LabelCount> labels)
    {
        if (labels.IsEmpty)
        {
            text.Append("# rest = [\"\"]                   # labels of the trials that mean rest\n");
            return;
        }

        text.Append("# The labels found. Take the # away before each that means rest; those of tasks belong to their sites, above.\nrest = [\n");
        ImmutableArray<LabelCount> shown = [.. labels.Take(Most)];
        IEnumerable<int> lengths = shown.Where(CanStand).Select(label => TomlText.Quoted(label.Label).Length + 1);
        int width = lengths.Where(length => length <= WidestColumn).DefaultIfEmpty(0).Max();
        foreach (LabelCount label in shown)
        {
            string value = CanStand(label) ? $"{TomlText.Quoted(label.Label)}," : $"too long or not plain: {TomlText.Quoted(Cut(label.Label))}";
            text.Append($"#   {value.PadRight(width)}  # {Times(label)}\n");
        }

        text.Append(labels.Length > Most ? Said($"#   and {Number(labels.Length - Most, "more label")}\n]\n") : "]\n");
    }

    // A setup takes no control characters, and a label of many words is no name for anything.
    private static bool CanStand(LabelCount label) => label.Label.Length <= LongestLabel && !label.Label.Any(char.IsControl);

    private static string Cut(string label) => OneLine.Of(label.Length <= LongestLabel ? label : label[..LongestLabel] + "...");

    private static string Times(LabelCount label) => (label.Count == 1 ? "once" : Said($"{label.Count} times")) + label switch
    {
        { LongestS: 0 } => ", no duration",
        _ when label.ShortestS == label.LongestS => Said($", {label.LongestS:0.###} s"),
        _ => Said($", {label.ShortestS:0.###} to {label.LongestS:0.###} s"),
    };

    private static string Word(TrialSource source) => source == TrialSource.Trigger ? "the trigger channel" : "annotations";

    private static string Number(int count, string noun) => Said($"{count} {noun}{(count == 1 ? string.Empty : "s")}");

    private static string Said(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
