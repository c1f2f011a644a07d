using System.Globalization;

namespace ChannelAudit.Impedance;

/// <summary>Numbers of readings as people read them.</summary>
public static class ImpedanceWords
{
    /// <summary>A value in kΩ, one decimal below 100: <c>4.8 kΩ</c>; below 1 kΩ two, so that 0.48 stays apart from 0.5.</summary>
    /// <param name="kohm">In kΩ; a negative value, which no contact has, is shown as 0.</param>
    public static string Kohm(double kohm) => Number(kohm) + " kΩ";

    /// <summary>The same without the unit.</summary>
    /// <param name="kohm">In kΩ.</param>
    public static string Number(double kohm)
    {
        double shown = Math.Max(0, kohm);
        return shown.ToString(shown < 0.995 ? "0.0#" : shown < 99.95 ? "0.0" : "0", CultureInfo.InvariantCulture);
    }

    /// <summary>A pair as people say it: <c>a to b</c>, <c>a to ground</c>.</summary>
    /// <param name="pair">One of the three pairs of a site.</param>
    /// <param name="site">The site, whose electrodes are called by their ids where it has any: <c>C1 to ground</c>.</param>
    public static string Of(ImpedancePair pair, SiteImpedance site)
    {
        ArgumentNullException.ThrowIfNull(site);
        return pair switch
        {
            ImpedancePair.AToB => $"{site.NameOfA} to {site.NameOfB}",
            ImpedancePair.AToGround => $"{site.NameOfA} to ground",
            _ => $"{site.NameOfB} to ground",
        };
    }

    /// <summary>A pair as a head of a column: <c>a to b</c>, <c>a to ground</c>.</summary>
    /// <param name="pair">One of the three pairs of a site.</param>
    public static string Of(ImpedancePair pair) => ImpedanceCodes.Of(pair).Replace("-", " to ", StringComparison.Ordinal);
}
