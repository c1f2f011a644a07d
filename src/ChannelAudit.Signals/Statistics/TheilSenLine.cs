using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>A straight line y = intercept + slope·x.</summary>
/// <param name="Slope">Slope in the unit of y per unit of x.</param>
/// <param name="Intercept">Value at x = 0 in the unit of y.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TheilSenLine(double Slope, double Intercept);
