using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;

namespace ChannelAudit.Studies;

/// <summary>The few numbers of a recording that are compared over a study.</summary>
internal sealed class StudyRecording
{
    private StudyRecording(RecordingResult result)
    {
        Id = result.Id;
        Sha256 = result.Sha256;
        DurationS = result.DurationS;
        Trials = result.Trials.Length;
        EventsKey = SameEvents.KeyOf(result);
        Channels = [.. result.Channels.Select(channel => new StudyChannel(channel.Name, channel.RateHz, channel.Signal))];
        Pairs = [.. result.Pairs.Select(pair => PairOf(result, pair)).OfType<StudyPair>()];
    }

    /// <summary>The id.</summary>
    public string Id { get; }

    /// <summary>Hash of the file.</summary>
    public string Sha256 { get; }

    /// <summary>Length in seconds, gaps included.</summary>
    public double DurationS { get; }

    /// <summary>How many trials it has.</summary>
    public int Trials { get; }

    /// <summary>Equal for two recordings whose trials have the same onsets and labels; null where that would mean nothing.</summary>
    public string? EventsKey { get; }

    /// <summary>The audited channels in file order.</summary>
    public ImmutableArray<StudyChannel> Channels { get; }

    /// <summary>Pairs of channels that share something, and with which sign; none that may be joined.</summary>
    public ImmutableArray<StudyPair> Pairs { get; }

    /// <summary>Takes what is compared.</summary>
    public static StudyRecording Of(RecordingResult result) => new(result);

    /// <summary>The channel of a name, or null.</summary>
    public StudyChannel? Find(string name) => Channels.FirstOrDefault(channel => string.Equals(channel.Name, name, StringComparison.Ordinal));

    // Joined sites share with the sign of the electrodes that gel has reached, whatever the polarity.
    private static StudyPair? PairOf(RecordingResult result, PairResult pair)
    {
        bool isJoined = result.Channels.Any(channel => channel.Findings.Any(finding =>
            string.Equals(finding.Reason, ReasonCode.Bridge, StringComparison.Ordinal)
            && finding.Channels.Contains(pair.ChannelA, StringComparer.Ordinal)
            && finding.Channels.Contains(pair.ChannelB, StringComparer.Ordinal)));
        double rho = isJoined ? 0 : pair.Rows.Where(row => row.Trial is "all" or "rest" or "active_a" or "active_b")
            .Select(row => row.Rho ?? 0).OrderByDescending(Math.Abs).FirstOrDefault();
        if (Math.Abs(rho) < StudyPair.LeastRho)
        {
            return null;
        }

        bool isOrdered = string.CompareOrdinal(pair.ChannelA, pair.ChannelB) <= 0;
        return new StudyPair(isOrdered ? pair.ChannelA : pair.ChannelB, isOrdered ? pair.ChannelB : pair.ChannelA, rho > 0 ? 1 : -1);
    }
}
