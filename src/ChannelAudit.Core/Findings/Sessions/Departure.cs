using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Segments;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Sessions;

/// <summary>One way in which a session departs from its protocol, with every place where it does.</summary>
/// <param name="kind">What it is called.</param>
/// <param name="cause">The likely cause.</param>
internal sealed class Departure(string kind, string cause)
{
    private const int Shown = 6;
    private readonly List<string> said = [];
    private readonly List<(decimal FromS, decimal ToS)> spans = [];
    private readonly SortedSet<int> trials = [];

    /// <summary>Whether there is any.</summary>
    public bool IsAny => said.Count > 0;

    /// <summary>A trial as it is named: number, label and time.</summary>
    public static string Name(Trial trial) =>
        string.Create(CultureInfo.InvariantCulture, $"trial {trial.Number} {(trial.Label is { } label ? $"'{OneLine.Of(label)}' " : string.Empty)}at {Time(trial.OnsetS)}");

    /// <summary>A time as it is said.</summary>
    public static string Time(decimal seconds) => seconds.ToString("0.0##", CultureInfo.InvariantCulture) + " s";

    /// <summary>Adds a place without a trial of its own.</summary>
    public void Add(string words, decimal fromS, decimal toS)
    {
        said.Add(words);
        spans.Add((fromS, toS));
    }

    /// <summary>Adds a trial.</summary>
    public void Add(Trial trial, string words)
    {
        Add($"{Name(trial)} {words}", trial.OnsetS, trial.OnsetS + trial.DurationS);
        trials.Add(trial.Number);
    }

    /// <summary>The finding; null when there is none.</summary>
    /// <param name="channels">All channels: events are those of every one.</param>
    public Finding? Finding(ImmutableArray<string> channels) => !IsAny ? null : new Finding
    {
        Reason = ReasonCode.Events,
        Grade = Grade.Pass,
        Channels = channels,
        Trial = trials.Count == 1 && said.Count == 1 ? trials.Min : null,
        FromS = (double)spans.Min(span => span.FromS),
        ToS = (double)spans.Max(span => span.ToS),
        Evidence = [],
        Text = $"{kind}: {string.Join("; ", said.Take(Shown))}"
            + $"{(said.Count > Shown ? string.Create(CultureInfo.InvariantCulture, $"; and {said.Count - Shown} more") : string.Empty)}",
        Cause = cause,
    };
}
