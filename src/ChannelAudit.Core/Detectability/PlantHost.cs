using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Detectability;

/// <summary>A recording as it is, audited, before anything is planted in it.</summary>
internal sealed class PlantHost
{
    private readonly HostChannel?[] channels;
    private readonly CancellationToken cancellation;

    /// <summary>Audits the recording.</summary>
    /// <param name="recording">The recording; its samples may be read by several threads.</param>
    /// <param name="input">With what it is audited.</param>
    /// <param name="cancellation">Checked often.</param>
    /// <exception cref="ChannelAuditException">When no channel is left to audit.</exception>
    public PlantHost(Recording recording, AuditInput input, CancellationToken cancellation)
    {
        (Recording, Input, this.cancellation) = (recording, input, cancellation);
        Result = Audit.Of(recording, input, cancellation);
        Audited = [.. AuditedChannels.Of(recording, input.Setup).Select(pair => pair.Channel)];
        channels = new HostChannel?[Audited.Length];
    }

    /// <summary>The recording.</summary>
    public Recording Recording { get; }

    /// <summary>With what it is audited.</summary>
    public AuditInput Input { get; }

    /// <summary>What the audit found as recorded.</summary>
    public RecordingResult Result { get; }

    /// <summary>The audited channels.</summary>
    public ImmutableArray<Channel> Audited { get; }

    /// <summary>The trials.</summary>
    public ImmutableArray<Trial> Trials => Input.Trials;

    /// <summary>Level and swings of an audited channel.</summary>
    public HostChannel Of(int channel)
    {
        lock (channels)
        {
            return channels[channel] ??= HostChannel.Of(Recording, Audited[channel], cancellation);
        }
    }

    /// <summary>Whether a trial of a channel is free of a reason, and could have been told to have it.</summary>
    public bool IsClean(int channel, int trial, string reason)
    {
        CellResult cell = Result.Channels[channel].Cells[trial];
        return !cell.Reasons.Contains(reason, StringComparer.Ordinal)
            && !cell.NotAssessed.Any(open => string.Equals(open.Reason, reason, StringComparison.Ordinal))
            && (double)Trials[trial].WindowFromS >= 0 && (double)Trials[trial].WindowToS <= Recording.DurationS;
    }

    /// <summary>Trials of a channel that are clean of a reason.</summary>
    public IEnumerable<int> CleanTrials(int channel, string reason) => Enumerable.Range(0, Trials.Length).Where(trial => IsClean(channel, trial, reason));

    /// <summary>Why no trial of any channel is clean of a reason, in words.</summary>
    public string WhyNoneIsClean(string reason)
    {
        string? cause = Result.Channels
            .SelectMany(channel => channel.Cells.SelectMany(cell => cell.NotAssessed).Concat(channel.NotAssessed))
            .FirstOrDefault(open => string.Equals(open.Reason, reason, StringComparison.Ordinal))?.Cause;
        return cause ?? (Trials.IsEmpty ? "no trials" : "found already in every trial of every channel as recorded");
    }

    /// <summary>Pairs that gel could join: those that the setup calls adjacent, or all when it names none.</summary>
    public IEnumerable<(int A, int B)> Pairs()
    {
        ImmutableArray<string> names = [.. Result.Channels.Select(channel => channel.Name)];
        bool anyNamed = Input.Setup.Sites.Any(site => site.Adjacent.Any(near => names.Contains(near, StringComparer.Ordinal)));
        return from a in Enumerable.Range(0, names.Length)
               from b in Enumerable.Range(a + 1, names.Length - a - 1)
               where !anyNamed || AreAdjacent(names[a], names[b])
               select (a, b);
    }

    private bool AreAdjacent(string one, string other) => Input.Setup.Sites.Any(site =>
        (Is(site, one) && site.Adjacent.Contains(other, StringComparer.Ordinal)) || (Is(site, other) && site.Adjacent.Contains(one, StringComparer.Ordinal)));

    private static bool Is(SiteSetup site, string name) => string.Equals(site.Name, name, StringComparison.Ordinal);
}
