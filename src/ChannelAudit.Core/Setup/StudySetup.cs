using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Setup;

/// <summary>What was where: the content of <c>setup.toml</c>; every part is optional.</summary>
public sealed record StudySetup
{
    /// <summary>A setup that says nothing.</summary>
    public static StudySetup Empty { get; } = new();

    /// <summary>The <c>[recording]</c> table.</summary>
    public RecordingSetup Recording { get; init; } = new();

    /// <summary>The <c>[[sites]]</c> in file order.</summary>
    public ImmutableArray<SiteSetup> Sites { get; init; } = [];

    /// <summary>The <c>[trials]</c> table.</summary>
    public TrialSetup Trials { get; init; } = new();

    /// <summary>The <c>[scoring]</c> table; its window is that of <see cref="Trials"/>.</summary>
    public ScoringSetup Scoring { get; init; } = new();

    /// <summary>What is different for some recordings, in file order: later tables win.</summary>
    public ImmutableArray<RecordingOverride> Overrides { get; init; } = [];

    /// <summary>Tells from a recording's path who it is of; null when the setup does not say.</summary>
    public PathPattern? ParticipantPath { get; init; }

    /// <summary>Whether technicians may be shown where recordings are compared over time: <c>people</c> of <c>[trend]</c>.</summary>
    public bool ShowsPeople { get; init; }

    /// <summary>The <c>[protocol]</c> table; null when there is none.</summary>
    public ProtocolSetup? Protocol { get; init; }

    /// <summary>The file's name, or null when there is no file.</summary>
    public string? FileName { get; init; }

    /// <summary>SHA-256 of the file's bytes in lower-case hexadecimal, or null when there is no file.</summary>
    public string? Sha256 { get; init; }

    /// <summary>The setup of one recording: with what is different for it.</summary>
    /// <param name="path">The recording's path below the given root, with <c>/</c>.</param>
    public StudySetup For(string path) => Overrides.Where(one => one.IsAbout(path)).Aggregate(this, (setup, one) => one.ApplyTo(setup));

    /// <summary>The day of a recording: what <c>[[recordings]]</c> says, else what stands in the path, else <c>[recording]</c>; null when nobody says. Never from a file header.</summary>
    /// <param name="path">The recording's path below the given root, with <c>/</c>.</param>
    public DateOnly? DayOf(string path)
    {
        string? own = Overrides.LastOrDefault(one => one.Recording.Date is not null && one.IsAbout(path))?.Recording.Date;
        return Day(own) ?? Day(ParticipantPath?.Find(path, "date")) ?? Day(Recording.Date);
    }

    private static DateOnly? Day(string? text) =>
        DateOnly.TryParseExact(text, ["yyyy-MM-dd", "yyyyMMdd"], CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;
}
