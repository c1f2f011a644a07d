namespace ChannelAudit.Reports.Bundles;

/// <summary>A trial of a channel whose samples a bundle could not take: the window is too long, or the rate beyond what a bundle holds.</summary>
/// <param name="Recording">The recording's id.</param>
/// <param name="Channel">The channel's name.</param>
/// <param name="Trial">The trial's number.</param>
public sealed record BundleOmission(string Recording, string Channel, int Trial);
