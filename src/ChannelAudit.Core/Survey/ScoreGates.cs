namespace ChannelAudit.Survey;

/// <summary>Why each question about a window could not be answered; null where it could.</summary>
/// <param name="Spectrum">Nothing spectral at all.</param>
/// <param name="Line">Line noise.</param>
/// <param name="Narrow">Narrow peaks.</param>
/// <param name="Low">Power below the band.</param>
/// <param name="Noise">Noise against muscle.</param>
/// <param name="Pops">Pops.</param>
/// <param name="Clipping">Clipping.</param>
/// <param name="Flat">Flat stretches.</param>
internal sealed record ScoreGates(
    string? Spectrum, string? Line, string? Narrow, string? Low, string? Noise, string? Pops, string? Clipping, string? Flat);
