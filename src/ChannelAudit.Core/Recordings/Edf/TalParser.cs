using System.Collections.Immutable;
using System.Text;

namespace ChannelAudit.Recordings.Edf;

/// <summary>Reads the annotation bytes of one record: <c>onset [21 duration] 20 {text 20}* 0</c>, padded with zeros.</summary>
/// <remarks>Kemp &amp; Olivan 2003, EDF+ specification 2.2.2. What is not written so but can be understood is kept and reported.</remarks>
/// <param name="warnings">Receives what is odd but readable.</param>
internal sealed class TalParser(EdfWarnings warnings)
{
    private const string Fault = "annotation with a fault";
    private const byte TextEnd = 20;
    private const byte DurationStart = 21;

    // A recording of thirty years: beyond it a time is taken as damage, and no index overflows.
    private const decimal LatestS = 1e9m;

    private char[] stamp = [];

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
                warnings.Record(Fault, record, $"annotation: not closed before the end of the record; kept");
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
        ReadOnlySpan<char> onsetText = Decoded(stampEnd < 0 ? bytes : bytes[..stampEnd]);
        ReadOnlySpan<char> durationText = default;
        int mark = onsetText.IndexOf((char)DurationStart);
        if (mark >= 0)
        {
            durationText = onsetText[(mark + 1)..].Trim();
            onsetText = onsetText[..mark];
        }

        onsetText = onsetText.Trim();
        int space = onsetText.IndexOf(' ');
        if (mark < 0 && space > 0)
        {
            warnings.Record(Fault, record, $"annotation: no mark between onset and duration in '{Shown(onsetText)}'; split at the space");
            durationText = onsetText[(space + 1)..];
            onsetText = onsetText[..space];
        }

        if (Seconds(onsetText) is not decimal onset)
        {
            warnings.Record(Fault, record, $"annotation: onset '{Shown(onsetText)}' is not a time; left out");
            return null;
        }

        if (onsetText[0] is not ('+' or '-'))
        {
            warnings.Record(Fault, record, $"annotation: onset '{Shown(onsetText)}' has no sign; taken as positive");
        }

        if (stampEnd < 0)
        {
            warnings.Record(Fault, record, $"annotation: no text follows the onset '{Shown(onsetText)}'; kept");
        }

        return new Tal(onset, Duration(durationText, record), stampEnd < 0 ? [] : Texts(bytes[(stampEnd + 1)..], record));
    }

    // One room for all stamps: a text for each would be more memory than the file.
    private ReadOnlySpan<char> Decoded(ReadOnlySpan<byte> bytes)
    {
        if (stamp.Length < bytes.Length)
        {
            stamp = new char[Math.Max(bytes.Length, 2 * stamp.Length)];
        }

        return stamp.AsSpan(0, Encoding.Latin1.GetChars(bytes, stamp));
    }

    private static decimal? Seconds(ReadOnlySpan<char> text) =>
        EdfNumber.Exact(text, out _) is decimal value && decimal.Abs(value) <= LatestS ? value : null;

    private static string Shown(ReadOnlySpan<char> text) => string.Concat(text[..Math.Min(text.Length, 20)].ToString().Select(c => char.IsControl(c) ? '?' : c));

    private decimal? Duration(ReadOnlySpan<char> text, long record)
    {
        if (text.IsEmpty)
        {
            return null;
        }

        decimal? duration = Seconds(text);
        if (duration is >= 0)
        {
            return duration;
        }

        warnings.Record(Fault, record, $"annotation: duration '{Shown(text)}' is not a length of time; kept without one");
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
                warnings.Record(Fault, record, $"annotation: a text is not closed; kept");
                end = bytes.Length;
            }

            texts.Add(EdfText.DecodeForeign(bytes[..end], out bool isUtf8));
            if (!isUtf8)
            {
                warnings.Record(Fault, record, $"annotation: a text is not valid UTF-8; read as Latin-1");
            }

            bytes = bytes[Math.Min(end + 1, bytes.Length)..];
        }

        return texts.ToImmutable();
    }
}
