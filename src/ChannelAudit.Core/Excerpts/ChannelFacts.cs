using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Excerpts;

/// <summary>What a window of a channel needs from the whole recording before it can be measured by itself. Nothing of a person is in it.</summary>
public sealed record ChannelFacts
{
    /// <summary>The channel's name in the tables.</summary>
    public required string Name { get; init; }

    /// <summary>Samples per second.</summary>
    public required Rational Rate { get; init; }

    /// <summary>Whether samples are microvolts.</summary>
    public required bool IsMicrovolts { get; init; }

    /// <summary>Why the samples are no raw signal, or null.</summary>
    public string? NotRaw { get; init; }

    /// <summary>Why the stated unit is not believed, or null.</summary>
    public string? UnitDoubt { get; init; }

    /// <summary>The low-pass that the file states, in Hz, or null: it ends the band.</summary>
    public double? LowpassHz { get; init; }

    /// <summary>The mains frequency as named, in Hz.</summary>
    public required double NominalHz { get; init; }

    /// <summary>The mains frequency as measured, in Hz.</summary>
    public required double LineHz { get; init; }

    /// <summary>Harmonics of the mains behind a notch.</summary>
    public ImmutableArray<int> Notched { get; init; } = [];

    /// <summary>The filter of scoring.</summary>
    public ScoringSetup Scoring { get; init; } = new();

    /// <summary>The facts of a channel.</summary>
    internal static ChannelFacts Of(Channel channel, string name, SpectralFrame frame, ScoringSetup scoring) => new()
    {
        Name = name,
        Rate = channel.Rate,
        IsMicrovolts = channel.IsMicrovolts,
        NotRaw = channel.NotRaw,
        UnitDoubt = channel.UnitDoubt,
        LowpassHz = channel.Prefilter.LowpassHz,
        NominalHz = frame.NominalHz,
        LineHz = frame.LineHz,
        Notched = frame.Notched,
        Scoring = scoring,
    };

    /// <summary>A channel that holds nothing but an excerpt.</summary>
    internal Channel Channel(int index, Excerpt excerpt) => new()
    {
        Index = index,
        Label = Name,
        RawLabel = Name,
        Rate = Rate,
        Step = 0,
        IsMicrovolts = IsMicrovolts,
        NotRaw = NotRaw,
        UnitDoubt = UnitDoubt,
        Prefilter = Prefilter.Unknown with { LowpassHz = LowpassHz },
        Stretches = excerpt.Stretches,
    };

    /// <summary>The frame of its spectra.</summary>
    internal SpectralFrame Frame(Channel channel) => SpectralFrame.Of(channel, NominalHz, LineHz, Notched, ScoringFilter.Of(Scoring));
}
