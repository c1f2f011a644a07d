using System.Collections.Immutable;
using System.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the annotation bytes of one record: <c>onset [21 duration] 20 {text 20}* 0</c>, padded with zeros.</summary>
/// <remarks>Kemp &amp; Olivan 2003, EDF+ specification 2.2.2. What is not written so but can be understood is kept and reported.</remarks>
/// <param name="warnings">Receives what is odd but readable.</param>
internal sealed class TalParser(EdfWarnings warnings)
{
    private const byte TextEnd = 20;
    private const byte DurationStart = 21;

    // A recording of thirty years: beyond it a time is taken as damage, and no index overflows.
    private const decimal LatestS = 1e9m;

    /// <summary>Reads the lists of one annotation signal in one record.</summary>
    /// <param name="bytes">The signal's bytes in the record.</param>
    /// <param name="record">The record, counted from 0, for messages.</param>
    /// <param name="into">Receives the lists in file order.</param>
    public void Parse(ReadOnlySpan<byte> bytes, long record, List<Tal> into)
    {
        while ((bytes = bytes.TrimStart((byte)0)).Length > 0)
        {
            int end = bytes.IndexOf((byte)0);
            if (end < 0)
            {
                warnings.Annotation(record, $"not closed before the end of the record; kept");
                end = bytes.Length;
            }

            if (ParseOne(bytes[..end], record) is Tal tal)
            {
                into.Add(tal);
            }

            bytes = bytes[end..];
        }
    }

    private Tal? ParseOne(ReadOnlySpan<byte> bytes, long record)
    {
        int stampEnd = bytes.IndexOf(TextEnd);
        ReadOnlySpan<byte> stamp = stampEnd < 0 ? bytes : bytes[..stampEnd];
        int mark = stamp.IndexOf(DurationStart);
        string onsetText = Encoding.Latin1.GetString(mark < 0 ? stamp : stamp[..mark]).Trim();
        string? durationText = mark < 0 ? null : Encoding.Latin1.GetString(stamp[(mark + 1)..]).Trim();
        int space = onsetText.IndexOf(' ', StringComparison.Ordinal);
        if (durationText is null && space > 0)
        {
            warnings.Annotation(record, $"no mark between onset and duration in '{Shown(onsetText)}'; split at the space");
            (onsetText, durationText) = (onsetText[..space], onsetText[(space + 1)..]);
        }

        if (Seconds(onsetText) is not decimal onset)
        {
            warnings.Annotation(record, $"onset '{Shown(onsetText)}' is not a time; left out");
            return null;
        }

        if (onsetText[0] is not ('+' or '-'))
        {
            warnings.Annotation(record, $"onset '{Shown(onsetText)}' has no sign; taken as positive");
        }

        if (stampEnd < 0)
        {
            warnings.Annotation(record, $"no text follows the onset '{Shown(onsetText)}'; kept");
        }

        return new Tal(onset, Duration(durationText, record), stampEnd < 0 ? [] : Texts(bytes[(stampEnd + 1)..], record));
    }

    private static decimal? Seconds(string text) =>
        EdfNumber.Exact(text, out _) is decimal value && decimal.Abs(value) <= LatestS ? value : null;

    private static string Shown(string text) => string.Concat(text.Select(c => char.IsControl(c) ? '?' : c).Take(20));

    private decimal? Duration(string? text, long record)
    {
        if (string.IsNullOrEmpty(text))
        {
            return null;
        }

        decimal? duration = Seconds(text);
        if (duration is >= 0)
        {
            return duration;
        }

        warnings.Annotation(record, $"duration '{Shown(text)}' is not a length of time; kept without one");
        return null;
    }

    private ImmutableArray<string> Texts(ReadOnlySpan<byte> bytes, long record)
    {
        ImmutableArray<string>.Builder texts = ImmutableArray.CreateBuilder<string>(1);
        while (bytes.Length > 0)
        {
            int end = bytes.IndexOf(TextEnd);
            if (end < 0)
            {
                warnings.Annotation(record, $"a text is not closed; kept");
                end = bytes.Length;
            }

            texts.Add(EdfText.DecodeForeign(bytes[..end], out bool isUtf8));
            if (!isUtf8)
            {
                warnings.Annotation(record, $"a text is not valid UTF-8; read as Latin-1");
            }

            bytes = bytes[Math.Min(end + 1, bytes.Length)..];
        }

        return texts.ToImmutable();
    }
}
