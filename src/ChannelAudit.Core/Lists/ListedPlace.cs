namespace ChannelAudit.Lists;

/// <summary>What a line of a person's list is about.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Recording">The recording as the list names it: an id, a file name or a path.</param>
/// <param name="Channel">The channel as the list names it, or null for all channels.</param>
/// <param name="Trial">The trial as the list writes it, or null for the whole channel.</param>
public sealed record ListedPlace(int Line, string Recording, string? Channel, string? Trial)
{
    private const int MostTrials = 10_000_000;

    /// <summary>The trial's number; null for the whole channel, and for a text that is no whole number above 0.</summary>
    /// <remarks>Spreadsheets turn 3 into <c>3.0</c> or <c>3,0</c>: both are 3. More decimals are no number of a trial: <c>1,000</c> may be a thousand.</remarks>
    public int? TrialNumber
    {
        get
        {
            if (Trial is null)
            {
                return null;
            }

            string[] parts = Trial.Split(['.', ','], 2);
            bool isWhole = parts.Length == 1 || parts[1] is "0";
            return isWhole && int.TryParse(parts[0], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int number)
                && number is > 0 and < MostTrials
                ? number
                : null;
        }
    }
}
