using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Two slopes with the sought one between them, and how many slopes lie below each.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct SlopeBracket(double Low, double High, long Below, long BelowHigh)
{
    public long Inside => BelowHigh - Below;

    public double Width => High - Low;
}
