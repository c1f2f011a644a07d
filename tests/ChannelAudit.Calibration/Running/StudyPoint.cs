using ChannelAudit.Calibration.Study;

namespace ChannelAudit.Calibration.Running;

/// <summary>One fault at one severity.</summary>
/// <param name="Sweep">The fault.</param>
/// <param name="Position">Position of the severity.</param>
/// <param name="Severity">The severity.</param>
public sealed record StudyPoint(Sweep Sweep, int Position, double Severity)
{
    // Another letter whenever something was changed after a look at judged recordings: those seeds are spent.
    private const string Series = "c";

    /// <summary>The seed of a recording: its name, its severity's position, its number and its set decide it, not what else is in the study.</summary>
    public ulong SeedOf(SeedSet set, int recording)
    {
        ulong hash = 14695981039346656037;
        foreach (char letter in FormattableString.Invariant($"{Series}/{Sweep.Name}/{Position}/{set}/{recording}"))
        {
            hash = unchecked((hash ^ letter) * 1099511628211);
        }

        // JSON's numbers, which carry seeds to the second generator, are exact up to 2^53.
        return hash >> 12;
    }
}
