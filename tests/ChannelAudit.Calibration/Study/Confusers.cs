using System.Collections.Immutable;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using static ChannelAudit.Calibration.Study.StudySession;

namespace ChannelAudit.Calibration.Study;

/// <summary>Good recordings, plain ones and such as resemble a fault: all of them must pass.</summary>
internal static class Confusers
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<Sweep> All { get; } =
    [
        Of("clean", "Nothing wrong", "session", "none", [1, 2, 3, 4], (subject, _) => With(subject)),
        Of("crosstalk", "The neighbour's muscle seen through tissue", "share", "confuser-crosstalk", [0.05, 0.1, 0.15, 0.2, 0.25], (subject, share) => With(subject with { Crosstalk = share })),
        Of("coactivation", "Cheek and eye contract together", "µV rms", "confuser-coactivation", [5, 15, 30, 60], (subject, uv) => Together(subject, uv)),
        Of("strong", "Contractions far above rest", "µV rms", "confuser-strong", [100, 200, 300], (subject, uv) => With(subject with { ContractionUv = uv })),
        Of("tonic", "A tense face", "µV rms at rest", "confuser-tonic", [4, 7, 12], (subject, uv) => With(subject with { RestUv = uv, ContractionUv = 10 * uv })),
        Of("blinks", "Blinks at the eye and the brow", "µV", "confuser-blinks", [50, 100, 200, 350], (subject, uv) => With(Dc(subject), [new Blinks(Eye, uv, 4.3M), new Blinks(Brow, uv / 2, 4.3M)])),
        Of("motor-units", "A single motor unit that fires", "times the resting level", "confuser-motor-units", [4, 8, 16], (subject, height) => With(subject, [new MotorUnitTrain(Cheek, height * subject.RestUv, 9)])),
        Of("stimulus-spikes", "A trigger that couples into a lead", "µV", null, [60, 150, 400], (subject, uv) => With(subject, [new StimulusSpikes(Cheek, uv, 0.5M)])),
        Of("common-source", "A remote muscle in all sites for a while", "µV rms", "confuser-common", [4, 10, 20], (subject, uv) => With(subject, [Remote(uv)])),
        Of("room-mains", "Mains that every room leaves", "µV rms", "confuser-line-small", [0.2, 0.4, 0.6], (subject, uv) => With(subject with { RoomMainsUv = uv })),
        Of("settling", "Contacts that settle", "µV/min", "confuser-drift", [20, 50, 100], (subject, slope) => With(Dc(subject), [.. AllSites.Select(site => new Drift(site, slope))])),
        Of("small-sway", "Leads that sway a little", "µV rms, 0.5 to 8 Hz", null, [3, 6, 9], (subject, uv) => With(Dc(subject), [new Motion(AllSites, uv)])),
        Of("speech", "Speech while trials run", "µV rms", "confuser-speech", [], (subject, _) => With(subject)),
        Of("heart", "The heart seen in all sites", "µV", "confuser-ecg", [], (subject, _) => With(subject)),
    ];

    private static Sweep Of(string name, string title, string severity, string? second, ImmutableArray<double> severities, Func<Subject, double, SessionPlan> plan) => new()
    {
        Name = name,
        Title = title,
        Severity = severity,
        Severities = severities,
        Plan = plan,
        SecondName = second,
        SecondSeverities = name switch { "speech" => [3, 8, 15], "heart" => [2, 5, 10], _ => [] },
    };

    private static SessionPlan Together(Subject subject, double uv)
    {
        SessionPlan plan = With(subject);
        return plan with
        {
            Trials =
            [
                .. plan.Trials.Select(trial => MuscleLevels.LevelIn(trial, Cheek, 0) > 0 && trial.Role == Segments.TrialRole.Scored
                    ? trial with { Activity = [new SiteActivity(Cheek, uv), new SiteActivity(Eye, uv)] }
                    : trial),
            ],
        };
    }

    private static CommonSource Remote(double uv) => new(uv, [new RemoteShare(Cheek, 0.5, 0.1), new RemoteShare(Brow, 0.4, 0.1), new RemoteShare(Eye, 0.6, 0.1)])
    {
        Span = new FaultSpan(40, 55),
    };

    private static Subject Dc(Subject subject) => subject with { Amplifier = subject.Amplifier with { HighpassHz = 0, LowpassHz = null } };
}
