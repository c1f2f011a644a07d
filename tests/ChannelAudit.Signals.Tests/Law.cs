using System.Globalization;
using CsCheck;

namespace ChannelAudit.Signals.Tests;

/// <summary>Laws tried on generated cases. The library's own sampler starts from one given seed only and draws the
/// others anew on each run; here every run sees the same cases.</summary>
internal static class Law
{
    public static void Holds<T>(Gen<T> cases, int count, Action<T> law)
    {
        var random = new PCG(1, 20260204);
        for (var at = 0; at < count; at++)
        {
            var state = random.ToString();
            var one = cases.Generate(random, null, out _);
            try
            {
                law(one);
            }
            catch (Exception error)
            {
                throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"Case {at} ({state}) breaks the law: {error.Message}"), error);
            }
        }
    }
}
