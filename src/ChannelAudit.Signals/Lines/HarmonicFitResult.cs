using System.Collections.Immutable;

namespace ChannelAudit.Signals.Lines;

/// <summary>What <see cref="HarmonicFit"/> found.</summary>
/// <param name="Harmonics">The sine waves, in the order of the frequencies asked for.</param>
/// <param name="Constant">The fitted constant in the unit of the input.</param>
/// <param name="Residual">Input minus fit, one value a sample, in the unit of the input.</param>
/// <param name="ResidualVariance">Σ residual²/(n − 2·frequencies − 1), in the squared unit.</param>
public sealed record HarmonicFitResult(
    ImmutableArray<Harmonic> Harmonics, double Constant, double[] Residual, double ResidualVariance);
