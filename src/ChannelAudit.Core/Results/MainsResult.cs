namespace ChannelAudit.Results;

/// <summary>The mains frequency used for line noise.</summary>
/// <param name="NominalHz">50 or 60, or the setup's.</param>
/// <param name="Hz">The frequency used, refined in the data where a peak was clear.</param>
/// <param name="Origin">How it was found, in words.</param>
public sealed record MainsResult(double NominalHz, double Hz, string Origin);
