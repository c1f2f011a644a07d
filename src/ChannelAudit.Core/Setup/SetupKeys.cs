using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>Every table and key that a setup may have.</summary>
internal static class SetupKeys
{
    private const double OneDayS = 86_400;

    /// <summary>The tables.</summary>
    public static ImmutableArray<TomlKey> Tables { get; } =
    [
        new("recording", "[recording]", "how the recording was made"),
        new("sites", "[[sites]]", "one table a site: a pair of electrodes over a muscle"),
        new("trials", "[trials]", "where trials come from and which part of them is scored"),
        new("recordings", "[[recordings]]", "what is different for some recordings of the study"),
        new("participants", "[participants]", "how the path of a recording tells whose it is"),
        new("scoring", "[scoring]", "how the trials will be scored: findings are judged on what its filter leaves"),
        new("protocol", "[protocol]", "what the session was to be: trials, durations, order; changes no verdict"),
        new("trend", "[trend]", "what may be shown where recordings are compared over time; changes no verdict"),
    ];

    /// <summary>Keys of <c>[recording]</c>.</summary>
    public static ImmutableArray<TomlKey> Recording { get; } =
    [
        new("mains_hz", "mains_hz = 50.0", "mains frequency in Hz; left out: found in the data", 40, 70),
        new("sampling_hz", "sampling_hz = 2000.0", "samples per second, for text files without a time column", RecordingBounds.LeastRateHz, RecordingBounds.MostRateHz),
        new("unit", "unit = \"uV\"", "unit of files that do not name one: uV, mV, V, or none for raw codes"),
        new("amplifier_noise_uv", "amplifier_noise_uv = 0.7", "the amplifier's own noise in the EMG band, uV rms", 0.001, 100),
        new("lab", "lab = \"north\"", "which lab, for what is compared over time; ids of electrodes and amplifiers are a lab's own"),
        new("amplifier", "amplifier = \"A\"", "which amplifier, for what is compared over time"),
        new("technician", "technician = \"T3\"", "who prepared the sites, as a code, for what is compared over time"),
        new("date", "date = 2026-03-12", "the day of the recording, without quotes"),
    ];

    /// <summary>Keys of each <c>[[sites]]</c>.</summary>
    public static ImmutableArray<TomlKey> Sites { get; } =
    [
        new("name", "name = \"cheek\"", "needed: the name used in tables and figures"),
        new("muscle", "muscle = \"zygomaticus major\"", "the muscle under the pair"),
        new("channel", "channel = \"EMG cheek\"", "needed: the channel's label in the recording"),
        new("side", "side = \"left\"", "left or right"),
        new("position", "position = [0.3, 0.6]", "x and y on the sketch of the face, from 0 at its left and top to 1 at its right and bottom, for sites that have no place of their own there", 0, 1),
        new("electrodes", "electrodes = [\"C1\", \"C2\"]", "ids of the two electrodes, first minus second"),
        new("adjacent", "adjacent = [\"eye\"]", "names of sites so near that gel can join them (saying it at one of the two is enough), and \"ground\" for the ground electrode"),
        new("task", "task = \"raise lip corner\"", "trial label of this muscle's voluntary contraction"),
    ];

    /// <summary>Keys of each <c>[[recordings]]</c>.</summary>
    public static ImmutableArray<TomlKey> Overrides { get; } =
    [
        new("match", "match = \"day2/P07*\"", "needed: which recordings, by their path below the folder that is screened, or a list of such patterns; * is any text within a name, ** any text, ? one character"),
        new("participant", "participant = \"P07\"", "who was recorded, as a code"),
        new("group", "group = \"waiting list\"", "the participant's group"),
        new("channels", "channels = { cheek = \"EMG 2\" }", "sites that are another channel there: name of the site and label of the channel"),
        new("electrodes", "electrodes = { cheek = [\"C3\", \"C4\"] }", "sites that have other electrodes there: name of the site and ids of the two, first minus second"),
        .. Recording,
    ];

    /// <summary>Keys of <c>[participants]</c>.</summary>
    public static ImmutableArray<TomlKey> Participants { get; } =
    [
        new("path", "path = \"{group}/{participant}_*\"", "the pattern of paths below the folder that is screened, without extension; {participant} and {group} are the texts that stand there, {date} is a day such as 2026-03-12 or 20260312"),
    ];

    /// <summary>Keys of <c>[trend]</c>.</summary>
    public static ImmutableArray<TomlKey> Trend { get; } =
    [
        new("people", "people = true", "whether trend may set the recordings of a technician beside the lab's usual range, when asked to with --own; left out: no"),
    ];

    /// <summary>Keys of <c>[trials]</c>.</summary>
    public static ImmutableArray<TomlKey> Trials { get; } =
    [
        new("from", "from = \"annotations\"", "annotations, events, trigger or blocks; left out: an events table, else annotations, else blocks of 10 s"),
        new("rest", "rest = [\"rest\"]", "trial labels that mean rest"),
        new("window", "window = [0.0, 3.0]", "scoring window in s after onset; left out: the whole event", 0, OneDayS),
        new("baseline_s", "baseline_s = 1.0", "seconds before onset that serve as baseline; left out: none", 0.001, OneDayS),
        new("minimum", "minimum = 8", "usable trials that a condition needs", 1, 1_000_000),
        new("trigger_channel", "trigger_channel = \"Status\"", "label of the trigger channel; left out: the first that looks like one"),
        new("trigger_edge", "trigger_edge = \"rising\"", "what is an event: rising (a code begins), falling (it ends), both, or held (from begin to end, with that duration)"),
        new("trigger_mask", "trigger_mask = 0xFF", "the bits of the channel's whole numbers that count; left out: all", 1, int.MaxValue),
        new("trigger_codes", "trigger_codes = { 1 = \"rest\", 2 = \"angry\" }", "label of each code that is an event; others are not, and counted in a warning; left out: every code, labelled by its number"),
        new("trigger_least_ms", "trigger_least_ms = 50", "an event that begins less than this after the one before is a double and no trial", 0.001, 60_000),
    ];

    /// <summary>Keys of <c>[scoring]</c>.</summary>
    public static ImmutableArray<TomlKey> Scoring { get; } =
    [
        new("highpass_hz", "highpass_hz = 20.0", "high-pass of the filter that scoring will use, in Hz", 0.01, 400),
        new("lowpass_hz", "lowpass_hz = 450.0", "its low-pass in Hz", 1, 100_000),
        new("notch_hz", "notch_hz = [50.0, 150.0]", "what it notches out, in Hz: a number or a list; each harmonic is named by itself", 1, 100_000),
        new("order", "order = 2", "Butterworth order of high-pass and low-pass, 6 dB an octave each; left out: 2", 1, 8),
        new("window", "window = [0.0, 3.0]", "scoring window in s after onset, the same as under [trials]", 0, OneDayS),
    ];

    /// <summary>Keys of <c>[protocol]</c>.</summary>
    public static ImmutableArray<TomlKey> Protocol { get; } =
    [
        new("trials", "trials = { angry = 10, happy = 10 }", "how many trials of each condition there are to be, by label", 1, 100_000),
        new("duration_s", "duration_s = [2.9, 3.1]", "least and greatest duration of a trial in s; by label in braces, as in { angry = [2.9, 3.1] }", 0, OneDayS),
        new("order", "order = [\"angry\", \"happy\"]", "labels in order, gone through again until the trials are used up; or \"as-listed\" (all of the first condition, then the next); or \"any\""),
        new("gap_s", "gap_s = [0.5, 20.0]", "least and greatest distance from one onset to the next in s", 0, OneDayS),
    ];
}
