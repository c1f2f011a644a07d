using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Writes the annotation bytes of every record.</summary>
/// <remarks>Kemp &amp; Olivan 2003, EDF+ specification 2.2.2 to 2.2.4.</remarks>
internal static class AnnotationPacker
{
    private const char DurationStart = '\u0015';
    private const char TextEnd = '\u0014';

    /// <summary>The bytes of each record, without padding.</summary>
    /// <exception cref="ArgumentException">When a text has a character that would end it.</exception>
    public static ImmutableArray<byte[]> Pack(EdfContent content)
    {
        StringBuilder[] records = new StringBuilder[content.Records];
        for (int record = 0; record < records.Length; record++)
        {
            records[record] = new StringBuilder(Stamp(content.StartS(record))).Append(TextEnd).Append(TextEnd).Append('\0');
        }

        decimal firstS = content.StartS(0);
        foreach (Annotation annotation in content.Annotations)
        {
            if (annotation.Text.Any(c => c < ' ' && c is not ('\t' or '\n' or '\r')))
            {
                throw new ArgumentException("An annotation has a control character.", nameof(content));
            }

            decimal onsetS = annotation.OnsetS + firstS;
            StringBuilder list = records[RecordOf(content, onsetS)].Append(Stamp(onsetS));
            if (annotation.DurationS is decimal durationS)
            {
                list.Append(DurationStart).Append(durationS.ToString(CultureInfo.InvariantCulture));
            }

            list.Append(TextEnd).Append(annotation.Text).Append(TextEnd).Append('\0');
        }

        return [.. records.Select(record => Encoding.UTF8.GetBytes(record.ToString()))];
    }

    private static string Stamp(decimal seconds) => (seconds < 0 ? string.Empty : "+") + seconds.ToString(CultureInfo.InvariantCulture);

    // The last record that has started; the first for an onset before the data.
    private static int RecordOf(EdfContent content, decimal onsetS)
    {
        int low = 0;
        int high = content.Records - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            (low, high) = content.StartS(middle) <= onsetS ? (middle, high) : (low, middle - 1);
        }

        return low;
    }
}
