using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>What must be known of a whole channel before any trial is judged: its rails, and how long equal samples are flat.</summary>
/// <param name="Rails">Stated and hidden rails.</param>
/// <param name="FlatLimits">From when on equal samples are flat.</param>
/// <param name="Least">The least value.</param>
/// <param name="Greatest">The greatest value.</param>
/// <param name="Pops">Where pops are possible; null where the channel is sampled too slowly for them.</param>
public sealed record TimeSurvey(Rails Rails, FlatLimits FlatLimits, double Least, double Greatest, PopScreen? Pops)
{
    /// <summary>A fingerprint of the signal, whatever its gain.</summary>
    public string Print { get; init; } = string.Empty;

    /// <summary>Of what its envelope is made; null where the channel is sampled too slowly for one.</summary>
    public EnvelopeSums? Envelope { get; init; }

    /// <summary>Slow deflections upwards.</summary>
    public int SwingsUp { get; init; }

    /// <summary>Slow deflections downwards.</summary>
    public int SwingsDown { get; init; }
}
