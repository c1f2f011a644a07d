using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Detectability;

/// <summary>How often a planted fault of one size was found.</summary>
/// <param name="Size">The size.</param>
/// <param name="Places">Places that had it.</param>
/// <param name="Found">Those found for the right reason, questionable or worse.</param>
/// <param name="Rejected">Those rejected for it.</param>
public sealed record DetectedPoint(double Size, int Places, int Found, int Rejected)
{
    /// <summary>The share found, or null without a place.</summary>
    public double? FoundShare => Places == 0 ? null : (double)Found / Places;

    /// <summary>95 % Wilson interval of the share found; 0 to 1 without a place.</summary>
    public (double Low, double High) FoundInterval => Places == 0 ? (0, 1) : WilsonInterval.Of(Found, Places);

    /// <summary>95 % Wilson interval of the share rejected; 0 to 1 without a place.</summary>
    public (double Low, double High) RejectedInterval => Places == 0 ? (0, 1) : WilsonInterval.Of(Rejected, Places);
}
