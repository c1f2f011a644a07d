using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>Every message about a setup beyond what holds for any TOML file.</summary>
internal static class SetupErrors
{
    /// <summary>A key outside of the table that it belongs into.</summary>
    public static ChannelAuditException OutsideItsTable(string file, int line, string key, string table) => TomlErrors.At(
        file, line, $"'{key}' stands outside of its table", $"put it below a line {table}");

    /// <summary>One bracket where two are needed.</summary>
    public static ChannelAuditException SitesNotAList(string file, int line) => TomlErrors.At(
        file, line, "sites must be a list of tables", "write [[sites]] in double brackets above each site");

    /// <summary>A word that is none of those allowed.</summary>
    public static ChannelAuditException NotAmong(TomlSection section, string key, string found, IReadOnlyList<string> words) => section.Fault(
        key, $"{key} = \"{OneLine.Of(found)}\" is not known", TomlErrors.DidYouMean(found, words, $"{key} is one of"));

    /// <summary>A site without one of the two keys that it needs.</summary>
    public static ChannelAuditException SiteWithout(TomlSection section, string key, string example) => section.Fault(
        key, $"this site has no {key}", $"add {example}");

    /// <summary>Two sites of one name.</summary>
    public static ChannelAuditException SiteTwice(TomlSection section, string name, int first) => section.Fault(
        "name", FormattableString.Invariant($"a site '{OneLine.Of(name)}' is there already, from line {first}"), "give each site a name of its own");

    /// <summary>Two sites on one channel.</summary>
    public static ChannelAuditException ChannelTwice(TomlSection section, string channel, int first) => section.Fault(
        "channel", FormattableString.Invariant($"channel '{OneLine.Of(channel)}' belongs to a site already, in line {first}"),
        "each site has a channel of its own; see the labels in the recording");

    /// <summary>Not exactly two electrodes.</summary>
    public static ChannelAuditException NotTwoElectrodes(TomlSection section, int found) => section.Fault(
        "electrodes", FormattableString.Invariant($"electrodes needs two ids, {found} given"),
        "write electrodes = [\"C1\", \"C2\"], first minus second");

    /// <summary>One electrode twice in a pair.</summary>
    public static ChannelAuditException SameElectrode(TomlSection section, string id) => section.Fault(
        "electrodes", $"electrode '{OneLine.Of(id)}' is named twice", "the two electrodes of a site have two ids");

    /// <summary>Not exactly two coordinates.</summary>
    public static ChannelAuditException NotTwoCoordinates(TomlSection section, int found) => section.Fault(
        "position", FormattableString.Invariant($"position needs two numbers, {found} given"), "write position = [x, y]");

    /// <summary>A site next to itself.</summary>
    public static ChannelAuditException AdjacentToItself(TomlSection section, string name) => section.Fault(
        "adjacent", $"site '{OneLine.Of(name)}' is adjacent to itself", "name the other sites that are near");

    /// <summary>A site that is called as the ground electrode is.</summary>
    public static ChannelAuditException GroundIsNoSite(TomlSection section) => section.Fault(
        "name", "a site is called 'ground'", "'ground' stands for the ground electrode in adjacent: give the site another name");

    /// <summary>A site next to one that does not exist.</summary>
    public static ChannelAuditException UnknownAdjacent(TomlSection section, string name, IReadOnlyList<string> sites) => section.Fault(
        "adjacent", $"adjacent names '{OneLine.Of(name)}', which is no site", TomlErrors.DidYouMean(name, [.. sites, SiteSetup.Ground], "sites"));

    /// <summary>Not exactly two ends of a window.</summary>
    public static ChannelAuditException NotAWindow(TomlSection section, int found) => section.Fault(
        "window", FormattableString.Invariant($"window needs two numbers, {found} given"), "write window = [from, to] in s after onset");

    /// <summary>A low-pass at or below the high-pass.</summary>
    public static ChannelAuditException NothingPasses(TomlSection section, double high, double low) => section.Fault(
        "lowpass_hz",
        FormattableString.Invariant($"lowpass_hz = {low} is not above highpass_hz = {high}: nothing would pass"),
        "give a low-pass above the high-pass, in Hz");

    /// <summary>Two different scoring windows.</summary>
    public static ChannelAuditException TwoWindows(TomlSection section, (decimal From, decimal To) trials, (decimal From, decimal To) scoring) => section.Fault(
        "window",
        FormattableString.Invariant($"window = [{scoring.From}, {scoring.To}] under [scoring] is not the window = [{trials.From}, {trials.To}] under [trials]"),
        "a study has one scoring window: take one of the two out, or make them the same");

    /// <summary>A window that ends before it starts.</summary>
    public static ChannelAuditException WindowNotIncreasing(TomlSection section, decimal from, decimal to) => section.Fault(
        "window", FormattableString.Invariant($"window = [{from}, {to}] does not end after it starts"), "write window = [from, to] in s after onset");

    /// <summary>A channel that the recording does not have.</summary>
    public static ChannelAuditException NoSuchChannel(
        StudySetup setup, SiteSetup site, string recordingFile, IReadOnlyList<string> labels) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, site '{OneLine.Of(site.Name)}': channel '{OneLine.Of(site.Channel)}' is not in {OneLine.Of(recordingFile)}",
        NearestName.Of(site.Channel, labels) is { } nearest
            ? $"did you mean '{OneLine.Of(nearest)}'? labels there: {OneLine.List(labels)}"
            : $"labels there: {OneLine.List(labels)}");

    /// <summary>A channel whose label the recording has more than once.</summary>
    public static ChannelAuditException AmbiguousChannel(StudySetup setup, SiteSetup site, string recordingFile, int count) => new(
        FaultKind.Usage,
        FormattableString.Invariant(
            $"{FileOf(setup)}, site '{OneLine.Of(site.Name)}': {count} channels in {OneLine.Of(recordingFile)} are labelled '{OneLine.Of(site.Channel)}'"),
        FormattableString.Invariant(
            $"say which by its position: channel = \"{OneLine.Of(site.Channel)}#1\" for the first, \"{OneLine.Of(site.Channel)}#2\" for the second"));

    /// <summary>Two sites that mean one channel by two names.</summary>
    public static ChannelAuditException OneChannelTwoSites(StudySetup setup, SiteSetup first, SiteSetup second, string recordingFile) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, site '{OneLine.Of(second.Name)}': channel '{OneLine.Of(second.Channel)}' in {OneLine.Of(recordingFile)} "
            + $"belongs to site '{OneLine.Of(first.Name)}' already",
        "each site has a channel of its own; see the labels in the recording");

    /// <summary>A site with the name of a channel that is another one.</summary>
    public static ChannelAuditException NameIsAnotherLabel(StudySetup setup, SiteSetup site, string recordingFile) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, site '{OneLine.Of(site.Name)}': another channel in {OneLine.Of(recordingFile)} is labelled '{OneLine.Of(site.Name)}'",
        "give the site another name, or that channel a site of its own");

    /// <summary>A label of rest or of a task that no trial of the recording has.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="place">Where the label stands in it.</param>
    /// <param name="label">The label.</param>
    /// <param name="events">What holds the trials: a file.</param>
    /// <param name="labels">The labels that trials have.</param>
    public static ChannelAuditException NoSuchLabel(StudySetup setup, string place, string label, string events, IReadOnlyList<string> labels) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, {place}: no trial in {OneLine.Of(events)} is labelled '{OneLine.Of(label)}'",
        labels.Count == 0 ? "no trial has a label: see where the trials come from, [trials] from"
            : NearestName.Of(label, labels) is { } nearest ? $"did you mean '{OneLine.Of(nearest)}'? labels there: {OneLine.List(labels)}"
            : $"labels there: {OneLine.List(labels)}");

    /// <summary>A label of rest or of a task whose events all are instants.</summary>
    public static ChannelAuditException LabelWithoutDuration(StudySetup setup, string place, string label, string events) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, {place}: '{OneLine.Of(label)}' has no duration in {OneLine.Of(events)}, so that it makes no trial",
        "state under [trials] which part after the onset is scored, for example window = [0.0, 3.0]");

    /// <summary>A site on a channel that cannot be audited.</summary>
    public static ChannelAuditException SiteNotAudited(StudySetup setup, SiteSetup site, string recordingFile, string cause) => new(
        FaultKind.Usage,
        $"{FileOf(setup)}, site '{OneLine.Of(site.Name)}': channel '{OneLine.Of(site.Channel)}' in {OneLine.Of(recordingFile)} cannot be audited: {OneLine.Of(cause)}",
        "name the channel that holds this site's signal, or leave the site out");

    private static string FileOf(StudySetup setup) => setup.FileName ?? "setup";

    /// <summary><c>recordings</c> is something else than a list of tables.</summary>
    public static ChannelAuditException OverridesNotAList(string fileName, int line) => TomlErrors.At(
        fileName, line, "recordings is not a list of tables", "write each as [[recordings]], in double brackets, with match = \"PATTERN\"");

    /// <summary>A <c>[[recordings]]</c> that does not say which.</summary>
    public static ChannelAuditException OverrideWithoutMatch(TomlSection section) => section.Fault(
        "match", "[[recordings]] does not say which", "write match = \"day2/P07*\": paths below the folder that is screened");

    /// <summary>A name in braces that means nothing.</summary>
    public static ChannelAuditException UnknownInBraces(TomlSection section, string key, string found, IReadOnlyList<string> names) => section.Fault(
        key,
        $"{found} means nothing in {key}, or stands there twice",
        names.Count == 0 ? "use *, ** and ? for what differs" : $"{string.Join(" and ", names.Select(name => $"{{{name}}}"))} can stand there, once each");

    /// <summary>A pattern that names nobody.</summary>
    public static ChannelAuditException NothingInBraces(TomlSection section, string key) => section.Fault(
        key, $"{key} has no {{participant}} and no {{group}}", "write path = \"{participant}_*\" for files such as P07_day1.edf");

    /// <summary>A channel that two sites would be.</summary>
    public static ChannelAuditException ChannelTwiceHere(TomlSection section, string channel) => section.Fault(
        "channels", $"two sites would be channel '{channel}'", "give every site that changes a channel of its own");
}
