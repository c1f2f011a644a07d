using ChannelAudit.Recordings;

namespace ChannelAudit.Detectability;

/// <summary>Changes samples of a planted stretch in place.</summary>
/// <param name="original">The samples as recorded, of all channels.</param>
/// <param name="at">Index of the first sample on the time axis.</param>
/// <param name="stored">Its index among the stored ones.</param>
/// <param name="samples">The samples as recorded, which become the changed ones.</param>
internal delegate void EditSamples(ISampleSource original, long at, long stored, Span<double> samples);
