using System.Collections.Immutable;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What the picture of a cell shows; nothing else can get into it.</summary>
internal sealed record CellScene
{
    /// <summary>The cell's channel, and below it others on the same time axis.</summary>
    public required ImmutableArray<CellTrace> Traces { get; init; }

    /// <summary>Start of what is shown, in seconds.</summary>
    public required double FromS { get; init; }

    /// <summary>End of what is shown, in seconds.</summary>
    public required double ToS { get; init; }

    /// <summary>Start of the scoring window, in seconds.</summary>
    public required double WindowFromS { get; init; }

    /// <summary>End of the scoring window, in seconds.</summary>
    public required double WindowToS { get; init; }

    /// <summary>What the time axis calls zero, in seconds: the start of the recording, or of the window where the time of the session would say too much.</summary>
    public double ZeroS { get; init; }

    /// <summary>The spectrum of the window; null when it is too short.</summary>
    public WindowSpectrum? Spectrum { get; init; }

    /// <summary>Whether times are those of the recording, as a clock shows them; else seconds from <see cref="ZeroS"/>.</summary>
    public required bool IsClock { get; init; }

    /// <summary>The harmonics of the mains that count, in Hz.</summary>
    public required ImmutableArray<double> HarmonicsHz { get; init; }

    /// <summary>The filter that the cell's own trace and its spectrum are shown behind, in words; null: none.</summary>
    public string? Behind { get; init; }

    /// <summary>The rails of the cell's channel in its unit; none in a blind review, and behind a filter.</summary>
    public ImmutableArray<double> Rails { get; init; } = [];

    /// <summary>The band of the muscle, lower edge in Hz.</summary>
    public required double BandFromHz { get; init; }

    /// <summary>The band of the muscle, upper edge in Hz.</summary>
    public required double BandToHz { get; init; }

    /// <summary>Findings; none in a blind review.</summary>
    public ImmutableArray<CellMarking> Marks { get; init; } = [];
}
