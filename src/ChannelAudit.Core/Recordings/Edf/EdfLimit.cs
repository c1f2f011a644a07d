using System.Globalization;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Writes a physical limit in the 8 characters of its field.</summary>
/// <remarks>The rounded limit is chosen first and the samples are scaled with it: scaling with a value that is then cut to 8
/// characters changes the gain.</remarks>
internal static class EdfLimit
{
    /// <summary>Characters of the field.</summary>
    public const int Width = 8;

    /// <summary>The nearest number of 8 characters that is not inside the limit.</summary>
    /// <param name="value">The limit wanted.</param>
    /// <param name="isUp">Whether outwards is upwards.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the value has too many digits before the point.</exception>
    public static string Format(double value, bool isUp)
    {
        if (double.IsFinite(value) && Math.Abs(value) < 1e8)
        {
            decimal exact = (decimal)value;
            for (int digits = Width - 2; digits >= 0; digits--)
            {
                decimal scale = (decimal)Math.Pow(10, digits);
                decimal rounded = (isUp ? decimal.Ceiling(exact * scale) : decimal.Floor(exact * scale)) / scale;
                string text = rounded.ToString("0.######", CultureInfo.InvariantCulture);
                if (text.Length <= Width)
                {
                    return text;
                }
            }
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "A limit has at most 8 characters.");
    }
}
