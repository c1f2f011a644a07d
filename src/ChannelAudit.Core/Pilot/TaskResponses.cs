using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Pilot;

/// <summary>How each site answers each task, read from the results of an audit.</summary>
internal static class TaskResponses
{
    /// <summary>The answer of a site to its own task; null when the setup names none for it.</summary>
    public static TaskResponse? Of(RecordingResult recording, ChannelResult channel, SiteSetup? site)
    {
        if (site?.Task?.Trim() is not { Length: > 0 } task)
        {
            return null;
        }

        Trial[] asked = [.. recording.Trials.Where(trial => trial.Role == TrialRole.Task && string.Equals(trial.Label, task, StringComparison.Ordinal))];
        if (asked.Length == 0)
        {
            return new TaskResponse(task, 0, null, null, null, null, $"the recording has no '{task}'");
        }

        (ChannelResult Channel, double Decibels)[] others =
        [
            .. recording.Channels
                .Where(other => other != channel)
                .Select(other => (other, Decibels: Decibels(other, asked)))
                .Where(other => other.Decibels is not null)
                .Select(other => (other.other, other.Decibels!.Value)),
        ];
        double? own = Decibels(channel, asked);
        (ChannelResult Channel, double Decibels)? strongest = others.Length == 0 ? null : others.MaxBy(other => other.Decibels);
        string? whyNot = own is not null ? null
            : channel.Measures.ValueOf("rest_rms") is null ? "no rest to compare with"
            : "its amplitude cannot be measured";
        return new TaskResponse(task, asked.Length, own, Median(channel, asked), strongest?.Channel.Name, strongest?.Decibels, whyNot);
    }

    private static double? Decibels(ChannelResult channel, Trial[] trials) =>
        channel.Measures.ValueOf("rest_rms") is { } rest and > 0 && Median(channel, trials) is { } contraction
            ? ContractionSnr.Of(contraction * contraction, rest * rest)
            : null;

    private static double? Median(ChannelResult channel, Trial[] trials)
    {
        double[] values =
        [
            .. channel.Cells
                .Where(cell => trials.Any(trial => trial.Number == cell.Trial))
                .Select(cell => cell.Measures.ValueOf("emg_rms"))
                .OfType<double>(),
        ];
        return values.Length == 0 ? null : Quantiles.MedianInPlace(values);
    }
}
