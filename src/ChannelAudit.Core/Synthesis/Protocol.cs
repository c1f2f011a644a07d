using System.Collections.Immutable;
using ChannelAudit.Segments;

namespace ChannelAudit.Synthesis;

/// <summary>An ordinary session: rest, a contraction of each muscle, scored trials of an invented study, rest again.</summary>
public sealed record Protocol
{
    /// <summary>The conditions of the invented study, taken in turn.</summary>
    public ImmutableArray<string> Conditions { get; init; } = ["harbour", "meadow"];

    /// <summary>How many trials are scored.</summary>
    public int ScoredTrials { get; init; } = 16;

    /// <summary>Length of each scored trial in seconds.</summary>
    public decimal TrialS { get; init; } = 3;

    /// <summary>Pause between trials in seconds.</summary>
    public decimal PauseS { get; init; } = 4;

    /// <summary>Length of each of the two rests in seconds.</summary>
    public decimal RestS { get; init; } = 20;

    /// <summary>Length of each contraction in seconds.</summary>
    public decimal TaskS { get; init; } = 5;

    /// <summary>Amplitude of each contraction in µV rms.</summary>
    public double ContractionUv { get; init; } = 25;

    /// <summary>Amplitude of each site's answer in a scored trial, in µV rms, by condition in turn; others stay at rest.</summary>
    public ImmutableArray<ImmutableArray<SiteActivity>> Answers { get; init; } = [];

    /// <summary>The trials for some sites, from 2 s on.</summary>
    /// <param name="sites">The sites; those with a task contract alone, one after the other.</param>
    public ImmutableArray<PlannedTrial> TrialsFor(ImmutableArray<SitePlan> sites)
    {
        List<PlannedTrial> trials = [];
        decimal at = 2;
        Add(RestS, "rest", TrialRole.Rest, []);
        foreach (SitePlan site in sites)
        {
            if (site.Task is { } task)
            {
                Add(TaskS, task, TrialRole.Task, [new SiteActivity(site.Name, ContractionUv)]);
            }
        }

        for (int i = 0; i < ScoredTrials; i++)
        {
            int condition = i % Conditions.Length;
            Add(TrialS, Conditions[condition], TrialRole.Scored, Answers.IsEmpty ? [] : Answers[condition % Answers.Length]);
        }

        Add(RestS, "rest", TrialRole.Rest, []);
        return [.. trials];

        void Add(decimal durationS, string label, TrialRole role, ImmutableArray<SiteActivity> activity)
        {
            trials.Add(new PlannedTrial { OnsetS = at, DurationS = durationS, Label = label, Role = role, Activity = activity });
            at += durationS + PauseS;
        }
    }

    /// <summary>A plan of this session without faults.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="sites">The sites; null: the three of the face.</param>
    public SessionPlan Plan(ulong seed, ImmutableArray<SitePlan>? sites = null)
    {
        ImmutableArray<SitePlan> used = sites ?? SitePlan.Face;
        ImmutableArray<PlannedTrial> trials = TrialsFor(used);
        return new SessionPlan { Seed = seed, Sites = used, Trials = trials, DurationS = trials[^1].EndS + 2 };
    }
}
