using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>How fast a protocol goes, in seconds.</summary>
/// <param name="TaskS">Each contraction.</param>
/// <param name="TapS">The taps on one site's wires.</param>
/// <param name="TapLeadS">From one site's wires to the next.</param>
internal readonly record struct ProtocolPace(int TaskS, int TapS, int TapLeadS)
{
    /// <summary>Rest at the beginning: a bridge needs 4 s of it, a level 5.</summary>
    public const int RestS = 8;

    /// <summary>Before each movement: as long as it takes to show it and say "now".</summary>
    public const int TaskLeadS = 3;

    // From leisurely to brisk.
    private static readonly ImmutableArray<ProtocolPace> All = [new(4, 4, 2), new(4, 4, 1), new(3, 3, 1)];

    /// <summary>The slowest pace that stays within a limit; the briskest where none does.</summary>
    /// <param name="tasks">How many movements.</param>
    /// <param name="sites">How many sites are tapped.</param>
    /// <param name="mostS">The limit in seconds.</param>
    public static ProtocolPace For(int tasks, int sites, int mostS)
    {
        foreach (ProtocolPace pace in All)
        {
            if (RestS + (tasks * (TaskLeadS + pace.TaskS)) + (sites * (pace.TapLeadS + pace.TapS)) <= mostS)
            {
                return pace;
            }
        }

        return All[^1];
    }
}
