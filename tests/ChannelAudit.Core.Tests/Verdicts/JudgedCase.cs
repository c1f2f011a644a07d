using System.Collections.Immutable;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Synthesis;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Core.Tests.Verdicts;

/// <summary>A short made recording as it stands before the policy; what the rules say of it is invented in each test.</summary>
internal static class JudgedCase
{
    private static readonly Lazy<ChannelCases> Made = new(Make);

    /// <summary>The cheek of a clean recording, with two trials and their baselines.</summary>
    public static ChannelCases Cheek => Made.Value;

    /// <summary>A window that holds nothing that could be measured.</summary>
    /// <param name="window">A window.</param>
    /// <param name="why">Why no spectrum was made, or null.</param>
    public static WindowCase Without(WindowCase window, string? why) =>
        new(window.Channel, window.Reading with { EmgPower = null, NoSpectrum = why }, window.IsWhole, window.Criteria);

    /// <summary>What a rule found.</summary>
    public static RuleOutcome Found(string reason, Grade grade, params ReadOnlySpan<string> measures) => new(
        reason, grade, [.. measures.ToArray().Select(measure => new Evidence(measure, 7, "uV", 5))], "7 of it", "a cause");

    /// <summary>A finding that two channels carry.</summary>
    public static Finding Carried(string reason, Grade grade) => new()
    {
        Reason = reason,
        Grade = grade,
        Channels = ["cheek", "eye"],
        FromS = 0,
        ToS = 1,
        Evidence = [],
        Text = "carried",
        Cause = "a cause",
    };

    /// <summary>A trial of 2 s with a verdict, numbered from 1.</summary>
    public static CellResult Cell(int trial, Grade verdict, params ReadOnlySpan<string> reasons) => new()
    {
        Trial = trial,
        Verdict = verdict,
        Reasons = [.. reasons],
        NotAssessed = [],
        Measures = [],
        Findings = [],
    };

    /// <summary>Trial n of 2 s that starts at 10 n.</summary>
    public static Trial Trial(int number) => new()
    {
        Number = number,
        Label = "happy",
        Role = TrialRole.Scored,
        OnsetS = 10 * number,
        DurationS = 2,
        WindowFromS = 10 * number,
        WindowToS = (10 * number) + 2,
    };

    private static ChannelCases Make()
    {
        SessionPlan plan = MadeAudit.Session(71, new Rational(1000, 1), scored: 2, restS: 6);
        using Recording recording = MadeRecording.Make(plan).Open();
        AuditInput input = new()
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = DefaultCriteria.All,
            Setup = MadeAudit.SetupOf(plan),
            Trials = [.. new[] { 1, 2 }.Select(Trial).Select(trial => trial with { BaselineFromS = trial.OnsetS - 2 })],
            TrialsFrom = "invented",
        };
        return AuditReadings.Of(recording, input, CancellationToken.None).Cases[0];
    }
}
