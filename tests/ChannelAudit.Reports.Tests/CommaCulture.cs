using System.Globalization;

namespace ChannelAudit.Reports.Tests;

/// <summary>Runs something under a culture with a decimal comma, made from the invariant one so that it exists on every machine.</summary>
internal static class CommaCulture
{
    public static T Run<T>(Func<T> action)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        comma.NumberFormat.NegativeSign = "\u2212";
        try
        {
            CultureInfo.CurrentCulture = comma;
            return action();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
