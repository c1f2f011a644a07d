using System.Collections.Immutable;

namespace ChannelAudit.Studies;

/// <summary>In what a recording is other than the rest; explained in docs/study.md.</summary>
public static class OddKind
{
    /// <summary>One file under two ids.</summary>
    public const string SameFile = "same-file";

    /// <summary>One signal under two ids.</summary>
    public const string SameSignal = "same-signal";

    /// <summary>The trials of one recording under two ids.</summary>
    public const string SameEvents = "same-events";

    /// <summary>Much shorter or longer than most.</summary>
    public const string Length = "length";

    /// <summary>Another sampling rate.</summary>
    public const string Rate = "rate";

    /// <summary>Raw codes where others have microvolts, or the reverse.</summary>
    public const string Unit = "unit";

    /// <summary>Amplitudes off by a factor near 10, 100 or 1000.</summary>
    public const string Gain = "gain";

    /// <summary>Another filter in the header.</summary>
    public const string FilterStated = "filter-stated";

    /// <summary>Another filter by the spectrum.</summary>
    public const string FilterMeasured = "filter-measured";

    /// <summary>A channel that others have is not there, or one that others do not have is.</summary>
    public const string Channels = "channels";

    /// <summary>The channels in another order.</summary>
    public const string ChannelOrder = "channel-order";

    /// <summary>A channel upside down.</summary>
    public const string Polarity = "polarity";

    /// <summary>All of them, in the order in which they are listed.</summary>
    public static ImmutableArray<string> All { get; } =
        [SameFile, SameSignal, SameEvents, Length, Rate, Unit, Gain, Polarity, FilterStated, FilterMeasured, Channels, ChannelOrder];
}
