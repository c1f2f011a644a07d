namespace ChannelAudit.Detectability;

/// <summary>What is done to a stretch of one channel while it is read.</summary>
/// <param name="Channel">Position among all channels of the recording.</param>
/// <param name="From">First sample on the channel's time axis.</param>
/// <param name="To">The sample behind the last one.</param>
/// <param name="Change">Changes samples in place; null: they are missing.</param>
internal sealed record PlantEdit(int Channel, long From, long To, EditSamples? Change);
