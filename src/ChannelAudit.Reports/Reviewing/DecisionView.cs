namespace ChannelAudit.Reports.Reviewing;

/// <summary>A decision as the page says it.</summary>
/// <param name="Number">Its line in the ledger.</param>
/// <param name="By">Who decided.</param>
/// <param name="When">When, in UTC.</param>
/// <param name="About">What it is about: the trial in the channel, the whole trial, or the whole channel.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Reason">Why.</param>
/// <param name="State">What has become of it.</param>
public sealed record DecisionView(int Number, string By, string When, string About, string Verdict, string Reason, string State);
