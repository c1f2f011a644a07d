using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace ChannelAudit.Signals;

/// <summary>Checks of the lengths of spans, with the length found in the message.</summary>
internal static class Lengths
{
    public static void RequireExactly(int found, int wanted, string name)
    {
        if (found != wanted)
        {
            Throw(name, "exactly", wanted, found);
        }
    }

    public static void RequireAtLeast(int found, int wanted, string name)
    {
        if (found < wanted)
        {
            Throw(name, "at least", wanted, found);
        }
    }

    [DoesNotReturn]
    private static void Throw(string name, string relation, int wanted, int found) =>
        throw new ArgumentException(
            string.Create(CultureInfo.InvariantCulture, $"{name} needs {relation} {wanted} values, found {found}."), name);
}
