using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary>How often a reason stands at what was excluded or doubted, and how often it could not be judged.</summary>
public sealed class ReasonTally
{
    private readonly int[] _trials = new int[3];
    private readonly int[] _channels = new int[3];

    /// <summary>Scored trials, each counted once a channel, for which the reason was not assessed.</summary>
    public int TrialsNotAssessed { get; set; }

    /// <summary>Channels for which it was not assessed over the whole recording.</summary>
    public int ChannelsNotAssessed { get; set; }

    /// <summary>Counts a trial that carries the reason.</summary>
    public void AddTrial(Grade verdict) => _trials[(int)verdict]++;

    /// <summary>Counts a channel that carries the reason.</summary>
    public void AddChannel(Grade verdict) => _channels[(int)verdict]++;

    /// <summary>Trials of a final verdict that carry the reason.</summary>
    public int Trials(Grade verdict) => _trials[(int)verdict];

    /// <summary>Channels of a final verdict that carry the reason.</summary>
    public int Channels(Grade verdict) => _channels[(int)verdict];
}
