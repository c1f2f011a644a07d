using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Decisions;
using ChannelAudit.Events;
using ChannelAudit.Impedance;
using ChannelAudit.Lists;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using CsCheck;
using Xunit;

namespace ChannelAudit.Core.Tests.Hostile;

/// <summary>Files of the right form with wrong values in any of their fields, cells and keys: read, or refused in our words, and never dear.</summary>
public sealed class StructuredFilesTests : IDisposable
{
    private const int Iterations = 300;

    // As in the fuzzing campaign: four times the file, and what a reader needs for an empty one.
    private const int Times = 4;
    private const long Fixed = 8L << 20;

    private const int HeadBytes = 256;

    private static readonly string[] Words =
    [
        "", " ", "0", "-1", "1", "2", "3", "99999999", "-9999999", "2147483647", "2147483648", "1e308", "-1e-308", "NaN", "inf", "0.0", "1,5", "1.5", "+0", "00", "n/a", "\u00B5V", "uV", "mV",
        "EDF+C", "EDF+D", "BDF+D", "EDF Annotations", "HP:20Hz LP:450Hz", "HP:0 LP:0", "rest", "a-b", "cheek.a-eye.b", "cheek", "reject", "pass", "K03", "10:02", "2031-03-12T10:02:00", "\"", "\"x", "\0", "\u202E", "[1, 2",
    ];

    // The fields of an EDF header that are read: of the file, and of each signal; width and place.
    private static readonly (int At, int Width)[] FileFields = [(0, 8), (184, 8), (192, 44), (236, 8), (244, 8), (252, 4)];
    private static readonly int[] SignalWidths = [16, 80, 8, 8, 8, 8, 8, 80, 8, 32];

    private static readonly Gen<string> Word = Gen.OneOf(AnyOf(Words), Gen.String[Gen.Char[' ', '~'], 0, 12], Gen.Int.Select(value => FormattableString.Invariant($"{value}")));

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string, string> Tables { get; } = new()
    {
        { "r_events.tsv", "onset duration trial_type value" },
        { "r_channels.tsv", "name type units low_cutoff high_cutoff notch sampling_frequency status" },
        { "readings.tsv", "site pair kohm time phase recording" },
        { "decisions.tsv", "recording channel trial verdict reason by" },
        { "exclusions.tsv", "recording channel trial reason verdict" },
        { "labels.tsv", "recording channel trial rater label" },
    };

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void HeadersWithWrongFields() => Gen.Select(Gen.Int[1, 3], Gen.Bool, Gen.Select(Gen.Int[0, 99], Word).Array[1, 4], Gen.Int[0, 99]).Sample(
        (signals, is24Bit, changes, kept) =>
        {
            byte[] file = Recording(signals, is24Bit);
            foreach ((int number, string word) in changes)
            {
                (int at, int width) = Field(number, signals + 1);
                Encoding.Latin1.GetBytes(word.PadRight(width)[..width]).CopyTo(file, at);
            }

            // Now and then cut off.
            AssertReadOrRefused("r.edf", kept < 80 ? file : file[..(file.Length * kept / 100)]);
        },
        iter: Iterations,
        threads: 1);

    [Theory]
    [MemberData(nameof(Tables))]
    public void TablesWithWrongCells(string name, string columns) => Gen.Select(Word.Array[0, 40], AnyOf("\t", ",", ";"), AnyOf("\n", "\r\n"), Gen.Int[0, 9]).Sample(
        (cells, separator, end, ragged) =>
        {
            string[] names = columns.Split(' ');
            int width = ragged == 0 ? names.Length + 1 : names.Length;
            IEnumerable<string> rows = cells.Chunk(width).Where(row => row.Length == width).Select(row => string.Join(separator, row));
            AssertReadOrRefused(name, Encoding.UTF8.GetBytes(string.Join(end, [string.Join(separator, names), .. rows])));
        },
        iter: Iterations,
        threads: 1);

    [Theory]
    [InlineData("setup.toml", "recording sites trials scoring protocol participants recordings", "mains_hz unit amplifier date name channel electrodes adjacent position task from rest window minimum highpass_hz match")]
    [InlineData("criteria.toml", "line-noise bridge clipping drift flatline dropout", "questionable reject source channel_questionable channel_reject")]
    public void SettingsWithWrongValues(string name, string tables, string keys) => Gen.Select(
        AnyOf(tables.Split(' ')), Gen.Bool, Gen.Select(AnyOf(keys.Split(' ')), Word, Gen.Int[0, 4]).Array[0, 5]).Array[1, 3].Sample(
        parts =>
        {
            StringBuilder text = new();
            foreach ((string table, bool isList, (string Key, string Word, int Form)[] lines) in parts)
            {
                text.Append(isList ? $"[[{table}]]\n" : $"[{table}]\n");
                foreach ((string key, string word, int form) in lines)
                {
                    string quoted = $"\"{word.Replace('"', '\'').Replace('\\', '/')}\"";
                    text.Append(key).Append(" = ").Append(form switch { 0 => word, 1 => quoted, 2 => $"[{quoted}]", 3 => $"[{word}, {word}]", _ => $"[{{ line_rms = {word} }}]" }).Append('\n');
                }
            }

            AssertReadOrRefused(name, Encoding.UTF8.GetBytes(text.ToString()));
        },
        iter: Iterations,
        threads: 1);

    private static Gen<string> AnyOf(params string[] items) => Gen.Int[0, items.Length - 1].Select(i => items[i]);

    private static (int At, int Width) Field(int number, int signals)
    {
        int field = number % (FileFields.Length + (SignalWidths.Length * signals));
        if (field < FileFields.Length)
        {
            return FileFields[field];
        }

        (int column, int signal) = Math.DivRem(field - FileFields.Length, signals);
        return (HeadBytes + (signals * SignalWidths[..column].Sum()) + (signal * SignalWidths[column]), SignalWidths[column]);
    }

    private static byte[] Recording(int signals, bool is24Bit)
    {
        using MemoryStream stream = new();
        ImmutableArray<EdfSignalContent> content =
        [
            .. Enumerable.Range(0, signals).Select(signal => new EdfSignalContent(FormattableString.Invariant($"EMG {signal}"), -1000, 1000, 20, (first, samples) => samples.Fill(signal + first))),
        ];
        EdfWriter.Write(stream, new EdfContent(content, 3) { Is24Bit = is24Bit, RecordDurationS = 0.1m, Annotations = [new Annotation(0.1m, 0.1m, "rest")] });
        return stream.ToArray();
    }

    private void AssertReadOrRefused(string name, byte[] file)
    {
        string path = _folder.In(name);
        File.WriteAllBytes(path, file);
        long before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            Read(path);
        }
        catch (ChannelAuditException refused)
        {
            Assert.NotEmpty(refused.Hint);
        }

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, Fixed + (Times * file.LongLength));
    }

    private static void Read(string path)
    {
        switch (Path.GetFileName(path))
        {
            case "r_events.tsv":
                EventsTable.Read(path);
                break;
            case "r_channels.tsv":
                BidsChannels.Read(path);
                break;
            case "readings.tsv":
                ImpedanceLog.Read(path, StudySetup.Empty);
                break;
            case "decisions.tsv":
                DecisionTable.Read(path, "R. Viewer");
                break;
            case "exclusions.tsv":
                ExclusionList.Read(path);
                break;
            case "labels.tsv":
                LabelList.Read(path);
                break;
            case "setup.toml":
                SetupFile.Read(path);
                break;
            case "criteria.toml":
                CriteriaFile.Read(path);
                break;
            default:
                RecordingOpener.Open(path, new ReadOptions()).Dispose();
                break;
        }
    }
}
