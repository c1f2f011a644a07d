using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace ChannelAudit.Synthesis.Demo;

/// <summary>The impedance readings of a session as the technician kept them: the three standard pairs of each site before and after, and after it one across cheek and eye.</summary>
internal static class DemoReadings
{
    /// <summary>The table: <c>site</c>, <c>pair</c>, <c>kohm</c>, <c>time</c>, <c>phase</c>, tab-separated, lines ended by LF.</summary>
    public static string Of(DemoSession session)
    {
        StringBuilder table = new("site\tpair\tkohm\ttime\tphase\n");
        Append(table, Standard(session, session.Before), $"{session.Day}T10:05", "before");
        ImpedanceReading across = ImpedanceMeter.Across(At(session, session.After), Electrode.First("cheek"), Electrode.First("eye"));
        Append(table, [.. Standard(session, session.After), across], $"{session.Day}T10:25", "after");
        return table.ToString();
    }

    private static ImmutableArray<ImpedanceReading> Standard(DemoSession session, DemoContacts contacts) =>
        ImpedanceMeter.StandardReadings(At(session, contacts));

    private static SessionPlan At(DemoSession session, DemoContacts contacts) =>
        session.Plan with { Sites = contacts.Sites, GroundKohm = contacts.Ground };

    private static void Append(StringBuilder table, ImmutableArray<ImpedanceReading> readings, string time, string phase)
    {
        foreach (ImpedanceReading reading in readings)
        {
            table.Append(CultureInfo.InvariantCulture, $"{reading.Site}\t{reading.Pair}\t{reading.Kohm:0.0}\t{time}\t{phase}\n");
        }
    }
}
