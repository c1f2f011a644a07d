using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Where in a file something odd was found; written out only where it is shown.</summary>
/// <param name="Part">What part it is.</param>
/// <param name="Number">Which one of them, counted from 1; null when there is one.</param>
internal readonly record struct FilePlace(string Part, long? Number = null)
{
    /// <summary>As messages say it.</summary>
    public override string ToString() => Number is long number ? string.Create(CultureInfo.InvariantCulture, $"{Part} {number}") : Part;
}
