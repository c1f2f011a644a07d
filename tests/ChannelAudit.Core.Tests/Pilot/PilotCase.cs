using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Pilot;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>An invented participant in the chair: a made pilot recording, the setup, and the meter's readings.</summary>
internal sealed record PilotCase
{
    /// <summary>What is recorded.</summary>
    public required SessionPlan Plan { get; init; }

    /// <summary>What the setup says is where; the plan itself when left out.</summary>
    public SessionPlan? AsWrittenDown { get; init; }

    /// <summary>Rows of readings, header included; null for none.</summary>
    public string? Readings { get; init; }

    /// <summary>Contacts of 2 kΩ, whose pairs read 4 kΩ.</summary>
    public static ImmutableArray<SitePlan> GoodContacts { get; } = [.. SitePlan.Face.Select(site => site with { FirstKohm = 2, SecondKohm = 2 })];

    /// <summary>Rest of 10 s, each muscle alone for 4 s, rest again, at a rate of the participant.</summary>
    public static SessionPlan Recorded(ulong seed, ImmutableArray<SitePlan>? sites = null) => new Protocol
    {
        ScoredTrials = 0,
        RestS = 10,
        TaskS = 4,
        PauseS = 2,
    }.Plan(seed, sites ?? GoodContacts) with
    { GroundKohm = 2 };

    /// <summary>The meter's readings of a plan at a time.</summary>
    public static string Read(SessionPlan plan, string time = "10:00", string phase = "before") => string.Concat(
        ImpedanceMeter.StandardReadings(plan).Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Site}\t{one.Pair}\t{one.Kohm:0.0}\t{time}\t{phase}\n")));

    /// <summary>Runs the pilot, by way of files.</summary>
    public PilotReport Run(string moreSetup = "")
    {
        using TemporaryFolder folder = new();
        string file = folder.In("pilot.edf");
        EdfFiles.Write(MadeRecording.Make(Plan), file);
        StudySetup setup = SetupFile.Read(folder.Write("setup.toml", SetupText.Of(AsWrittenDown ?? Plan) + moreSetup));
        ImpedanceLog? readings = Readings is null ? null
            : ImpedanceLog.Read(folder.Write("readings.tsv", "site\tpair\tkohm\ttime\tphase\n" + Readings), setup);
        return PilotAudit.Of(RecordingList.Find([file], [])[0], setup, DefaultCriteria.All, null, readings, CancellationToken.None);
    }

    /// <summary>A plan in which other muscles answer a task than the one that was asked.</summary>
    public static SessionPlan Answering(SessionPlan plan, string task, params ReadOnlySpan<SiteActivity> activity)
    {
        ImmutableArray<SiteActivity> answers = [.. activity];
        return plan with { Trials = [.. plan.Trials.Select(trial => trial.Role == TrialRole.Task && string.Equals(trial.Label, task, StringComparison.Ordinal) ? trial with { Activity = answers } : trial)] };
    }
}
