using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Setup;
using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Drafts;

/// <summary>Writes a draft as a setup file.</summary>
/// <remarks>
/// What is not known stands in lines of comment that are completed by taking the <c>#</c> away. A line that has to be filled in is refused by the
/// reader until it is, so that an example never passes for a fact.
/// </remarks>
internal static class DraftText
{
    private const int CommentColumn = 32;
    private const int MostNeighbours = 7;

    private static readonly ImmutableArray<string> Sources = ["annotations", "events", "trigger", "blocks"];

    /// <summary>The text of the file, lines ended by LF.</summary>
    public static string Of(SetupDraft draft)
    {
        StringBuilder text = new();
        string file = OneLine.Of(draft.RecordingFile);
        text.Append(
            $"""
            # What was where, once a study. Made by "channelaudit setup new" from the labels in {file}; nothing in it is guessed.
            # Lines that begin with # say nothing yet. Fill in what you know and take the # away; leave what you do not know.
            # A line that is not filled in is refused by: channelaudit setup check setup.toml {file}
            # Use codes, not names of people: what stands here can reach the outputs.


            """);
        Recording(text, draft, file);
        Sites(text, draft);
        Trials(text, draft.Events);
        text.Append("\n[scoring]\n# The filter that your scoring program uses before it rectifies: findings are judged on what it leaves.\n");
        Line(text, "# highpass_hz = 0.0", "for example 20.0");
        Line(text, "# lowpass_hz = 0.0", "for example 450.0");
        Line(text, "# notch_hz = [0.0]", "for example [50.0, 150.0]");
        Study(text);
        return text.ToString();
    }

    private static void Recording(StringBuilder text, SetupDraft draft, string file)
    {
        text.Append("[recording]\n");
        if (draft.IsText)
        {
            Line(text, "# sampling_hz = 0.0", draft.LacksRate
                ? $"NEEDED, in samples per second: {file} has no time column and no rate"
                : "samples per second, only for files that do not tell it");
        }

        if (draft.IsText || draft.LacksUnit)
        {
            string missing = draft.LacksUnit ? "; the file names none: taken for uV" : string.Empty;
            Line(text, "# unit = \"\"", "\"uV\", \"mV\", \"V\", or \"none\" for raw codes" + missing);
        }

        Line(text, "# mains_hz = 50.0", "one of the two; left out: found in the data");
        Line(text, "# mains_hz = 60.0", string.Empty);
        Line(text, "# amplifier_noise_uv = 0.0", "the amplifier's own noise in the EMG band, uV rms, from its papers");
        Line(text, "# amplifier = \"\"", "which amplifier, as a code");
        Line(text, "# technician = \"\"", "who prepared the sites, as a code");
        Line(text, "# date = YYYY-MM-DD", "the day of the recording");
    }

    private static void Sites(StringBuilder text, SetupDraft draft)
    {
        text.Append(
            """

            # One table for each site, a pair of electrodes over a muscle:
            #   name        for tables and figures; change it as you like, for example to "cheek"
            #   channel     its label in the recording; leave it as it is
            #   muscle      for example "zygomaticus major"
            #   side        the participant's left or right: keep one of the two lines
            #   electrodes  ids of the two electrodes, first minus second, for example ["C1", "C2"]
            #   adjacent    names of the sites so near that gel can join them: keep only those; "ground" for the ground electrode
            #   task        label of the trials in which this muscle was contracted on request. Ask for a movement ("raise lip
            #               corner"), never for an emotion. The labels of this recording are listed below, under [trials]

            """);
        foreach (DraftSite site in draft.Sites)
        {
            string[] others = [.. draft.Sites.Where(other => other != site).Select(other => other.Name)];
            text.Append($"\n[[sites]]\nname = {TomlText.Quoted(site.Name)}\nchannel = {TomlText.Quoted(site.Channel)}\n");
            text.Append("# muscle = \"\"\n# side = \"left\"\n# side = \"right\"\n# electrodes = [\"\", \"\"]\n");
            text.Append($"# adjacent = {(others.Length is > 0 and <= MostNeighbours ? TomlText.List(others) : "[\"\"]")}\n# task = \"\"\n");
        }

        if (!draft.Unlisted.IsEmpty)
        {
            text.Append("\n# Also in the recording, but not audited:\n");
            foreach (Results.SkippedChannel channel in draft.Unlisted)
            {
                text.Append($"#   {TomlText.Quoted(OneLine.Of(channel.Label))}: {OneLine.Of(channel.Cause)}\n");
            }
        }
    }

    private static void Trials(StringBuilder text, DraftEvents events)
    {
        text.Append($"\n[trials]\n# {LabelLines.Summary(events)}\n");
        string from = Word(events.Source);
        IEnumerable<string> others = Sources.Where(word => !string.Equals(word, from, StringComparison.Ordinal));
        string words = string.Join(", ", others.Select(TomlText.Quoted));
        Line(text, $"# from = \"{from}\"", $"or {words}; left out: events table, else annotations, else blocks of 10 s");
        LabelLines.AppendTo(text, events.Labels);
        Line(text, "# window = [0.0, 0.0]", "the part that is scored, in s after onset, for example [0.0, 3.0]; left out: all of it");
        Line(text, "# baseline_s = 0.0", "seconds before onset that serve as baseline; left out: none");
        Line(text, "# minimum = 0", "usable trials that a condition needs; left out: 8");
    }

    private static void Study(StringBuilder text)
    {
        text.Append("\n# For a study of several recordings: whose each is, what a session was to be, and what differs in some. Take the # of the heading away, too.\n");
        text.Append("# [participants]\n");
        Line(text, "# path = \"\"", "where codes stand in the paths, for example \"{group}/{participant}_*\"");
        text.Append("# [protocol]\n");
        Line(text, "# trials = { \"\" = 0 }", "how many of each label there are to be, for example { angry = 10, happy = 10 }");
        text.Append("# [[recordings]]\n");
        Line(text, "# match = \"\"", "which recordings, for example \"P07_*\"; below it what differs there, for example:");
        Line(text, "# channels = { \"\" = \"\" }", "leads that were exchanged, for example { cheek = \"EMG 3\", brow = \"EMG 1\" }");
    }

    private static string Word(TrialSource source) => source switch
    {
        TrialSource.Annotations => "annotations",
        TrialSource.Events => "events",
        TrialSource.Trigger => "trigger",
        _ => "blocks",
    };

    private static void Line(StringBuilder text, string line, string comment) =>
        text.Append(comment.Length == 0 ? line : $"{line.PadRight(CommentColumn - 1)} # {comment}").Append('\n');
}
