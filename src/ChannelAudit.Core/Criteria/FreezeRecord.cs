using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>What a frozen criteria file says of the day it was frozen, held against the limits that stand in it now.</summary>
/// <param name="Date">The day as <c>yyyy-MM-dd</c>.</param>
/// <param name="Version">The version of the program that froze it.</param>
/// <param name="Sha256">The hash of the limits as they were frozen, lower-case hexadecimal.</param>
/// <param name="Differences">One line for each list of limits that is other than on that day, and one for a record that was changed itself; empty when nothing was.</param>
/// <remarks>Whoever changes limits, record and hash together leaves no trace in the file: only a copy of the hash kept elsewhere shows it.</remarks>
public sealed record FreezeRecord(string Date, string Version, string Sha256, ImmutableArray<string> Differences)
{
    /// <summary>Whether the limits are those of that day.</summary>
    public bool IsUnchanged => Differences.IsEmpty;
}
