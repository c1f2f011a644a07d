using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Files that others made. Expected values: the README beside the files and the text exports that come with them.</summary>
public sealed class RealEdfFileTests
{
    private static readonly ReadOptions Plain = new();

    [SkippableTheory]
    [InlineData("edf/pyedflib-tests/test_generator.bdf", -15000)]
    [InlineData("edf/pyedflib-tests/test_generator_datarec_generator_2.bdf", -7500)]
    [InlineData("edf/pyedflib-tests/test_utf8.edf", 56106)]
    [InlineData("edf/pyedflib-tests/test_subsecond.edf", 56106)]
    [InlineData("edf/edfio-tests/test_subsecond.bdf", 56106)]
    [InlineData("edf/edfReader-extdata/edfPlusC.edf", 0)]
    [InlineData("edf/edfReader-extdata/bdfPlusC.bdf", 0)]
    [InlineData("edf/edfio-tests/short_psg.edf", 46710)]
    [InlineData("edf/edfio-tests/short_psg.bdf", 46710)]
    [InlineData("edf/EDF.jl-tests/bdf_test.bdf", -353537)]
    [InlineData("edf/EDF.jl-tests/bdf_test.edf", -2264953)]
    public void StoredIntegersOfTheFirstSignalSumToTheKnownValue(string relative, long expected) =>
        Assert.Equal(expected, EdfCodes.Read(RealFile.Path(relative), 0).Sum());

    [SkippableFact]
    public void FirstStoredIntegersOfA24BitFileAreKnown() => Assert.Equal(
        [87830, 175574, 263145],
        EdfCodes.Read(RealFile.Path("edf/pyedflib-tests/test_generator.bdf"), 0)[..3]);

    [SkippableTheory]
    [InlineData("edfPlusC.edf", "EDF+C")]
    [InlineData("bdfPlusC.bdf", "BDF+C")]
    public void PhysicalValuesEqualTheExport(string name, string format)
    {
        string path = RealFile.Path("edf/edfReader-extdata/" + name);
        using Recording recording = EdfReader.Open(path, Plain);
        string[] lines = File.ReadAllLines(Path.Combine(Path.GetDirectoryName(path)!, Path.GetFileNameWithoutExtension(path) + "_data.txt"));

        Assert.Equal(format, recording.Format);
        Assert.Equal(new Rational(200, 1), recording.Channels[0].Rate);
        Assert.Equal(20, recording.DurationS);
        for (int channel = 0; channel < 11; channel++)
        {
            double[] values = EdfCodes.Values(recording, channel);
            Assert.Equal(lines.Length - 1, values.Length);
            for (int i = 0; i < values.Length; i++)
            {
                // The export has six decimals.
                double exported = double.Parse(lines[i + 1].Split(',')[channel + 1], CultureInfo.InvariantCulture);
                Assert.Equal(exported, values[i], 0.51e-6);
            }
        }
    }

    [SkippableFact]
    public void EachRecordOfTheDiscontinuousFileIsThatSecondOfTheContinuousOne()
    {
        int[] seconds = [0, 2, 4, 5, 6, 7, 8, 9, 12, 15, 19];
        using Recording gapped = EdfReader.Open(RealFile.Path("edf/edfReader-extdata/edfPlusD.edf"), Plain);
        using Recording whole = EdfReader.Open(RealFile.Path("edf/edfReader-extdata/edfPlusC.edf"), Plain);

        Assert.Equal("EDF+D", gapped.Format);
        Assert.Equal(20, gapped.DurationS);
        Assert.Equal(
            [new(0, 200, 0), new(400, 200, 200), new(800, 1200, 400), new(2400, 200, 1600), new(3000, 200, 1800), new(3800, 200, 2000)],
            gapped.Channels[0].Stretches.ToArray());
        for (int channel = 0; channel < 11; channel++)
        {
            double[] values = EdfCodes.Values(whole, channel);
            double[] expected = [.. seconds.SelectMany(second => values[(200 * second)..(200 * (second + 1))])];
            Assert.Equal(expected, EdfCodes.Values(gapped, channel));
        }
    }

    [SkippableTheory]
    [InlineData("edf/pyedflib-tests/test_subsecond.edf", "1.9511719")]
    [InlineData("edf/edfio-tests/test_subsecond.bdf", "1.9511719")]
    [InlineData("edf/pyedflib-tests/test_utf8.edf", "1.5566407")]
    public void SubSecondStartsAreTakenOffTheOnsets(string relative, string firstOnset)
    {
        using Recording recording = EdfReader.Open(RealFile.Path(relative), Plain);

        Assert.Equal(decimal.Parse(firstOnset, CultureInfo.InvariantCulture), recording.Annotations[0].OnsetS);
        Assert.Equal("XLSpike", recording.Annotations[0].Text);
        Assert.Empty(recording.Warnings);
    }

    [SkippableFact]
    public void InvertedFileWithUtf8AnnotationsIsRead()
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/pyedflib-tests/test_utf8.edf"), Plain);
        Channel channel = recording.Channels[0];

        Assert.Equal(5, recording.Annotations.Length);
        Assert.Equal("中文测试八个字", recording.Annotations[2].Text);
        Assert.Equal(698 * 128, channel.StoredLength);
        Assert.Equal(new Rational(128, 1), channel.Rate);
        Assert.Equal(-8711, channel.LowerRail!.Value, 1e-9);
        Assert.Equal(8711, channel.UpperRail);
    }

    [SkippableFact]
    public void TwoAnnotationSignalsAndAShortRecordAreRead()
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/edfReader-extdata/edfAnnonC.edf"), Plain);

        Assert.Equal(["annotation signal", null, "annotation signal", null], recording.Channels.Select(channel => channel.NotAudited),
            StringComparer.Ordinal);
        Assert.Equal(["EDF Annotations", "Channel 1", "EDF Annotations#2", "Channel 2"], recording.Channels.Select(channel => channel.Label),
            StringComparer.Ordinal);
        Assert.Equal(new Rational(30000, 1), recording.Channels[1].Rate);
        Assert.Equal(new Rational(20000, 1), recording.Channels[3].Rate);
        Assert.Equal(1.2, recording.DurationS);

        // The list beside the file, less the start at 0.7 s; ordered by onset here as it is there.
        Assert.Equal(
            ["0.049 - Test1", "0.1 - Test2", "0.14 - Test3", "0.172 0.005 Test4", "1.019 - Test5", "1.1 - Test6", "1.162 0.005 Test8", "1.19 - Test7"],
            recording.Annotations.OrderBy(annotation => annotation.OnsetS).Select(Line),
            StringComparer.Ordinal);
    }

    [SkippableTheory]
    [InlineData("short_psg.edf")]
    [InlineData("short_psg.bdf")]
    public void MixedRatesAndUnitsAreReadAsTheReferenceHeaderSays(string name)
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/edfio-tests/" + name), Plain);
        string path = RealFile.Path("edf/edfio-tests/" + name);

        Assert.Equal([100, 100, 100, 1, 1, 1, 1], recording.Channels.Select(channel => channel.Rate.Value));
        Assert.Equal([46710, 27829, 31664], Enumerable.Range(0, 3).Select(i => EdfCodes.Read(path, i).Sum()));
        Assert.Equal(
            [null, null, null, "not calibrated: no unit", null, "unit 'DegC' is not a voltage", "status or trigger signal"],
            recording.Channels.Select(channel => channel.NotAudited),
            StringComparer.Ordinal);
        Assert.Equal((0.5, 100.0), (recording.Channels[0].Prefilter.HighpassHz, recording.Channels[0].Prefilter.LowpassHz));
        Assert.Equal((16.0, 0.7), (recording.Channels[4].Prefilter.HighpassHz, recording.Channels[4].Prefilter.LowpassHz));
        Assert.Equal(300, recording.DurationS);
        Assert.Equal(name.EndsWith("edf", StringComparison.Ordinal) ? "EDF" : "BDF", recording.Format);
    }

    [SkippableTheory]
    [InlineData("9", 0, "number of records is stated as '9'; the file holds 10, and so many were read")]
    [InlineData("10", 1, "1 bytes behind the last record; left out")]
    [InlineData("10", 13, "13 bytes behind the last record; left out")]
    [InlineData("11", 0, "number of records is stated as '11'; the file holds 10, and so many were read")]
    [InlineData("-1", 0, "number of records is stated as '-1'; the file holds 10, and so many were read")]
    public void TheNumberOfRecordsComesFromTheSize(string stated, int extra, string warning)
    {
        using MadeEdf file = new();
        file.Bytes = [.. File.ReadAllBytes(RealFile.Path("edf/edfio-tests/short_psg.edf")), .. new byte[extra]];
        using Recording recording = file.Set("records", stated).Open();

        Assert.Equal(10 * 3000, recording.Channels[0].StoredLength);
        Assert.Equal(warning, Assert.Single(recording.Warnings).Message);
    }

    [SkippableTheory]
    [InlineData("edf/edfio-tests/SC4001EC-Hypnogram.edf", 154, "0 30630 Sleep stage W")]
    [InlineData("edf/edfio-tests/SC4001EC-Hypnogram.bdf", 154, "0 30630 Sleep stage W")]
    [InlineData("edf/wfdb-tests/test_edfann.edf", null, "0 30 Sleep stage W")]
    public void FilesOfAnnotationsAloneOpenWithoutAChannelToAudit(string relative, int? count, string first)
    {
        using Recording recording = EdfReader.Open(RealFile.Path(relative), Plain);

        Assert.All(recording.Channels, channel => Assert.Equal("annotation signal", channel.NotAudited));
        Assert.Equal(count ?? recording.Annotations.Length, recording.Annotations.Length);
        Assert.Equal(first, Line(recording.Annotations[0]));
        Assert.Empty(recording.Warnings);
    }

    [SkippableFact]
    public void AFileMarkedAsPlusWithoutAnnotationsIsReadAsPlain()
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/EDF.jl-tests/bdf_test.edf"), Plain);

        Assert.Equal("EDF", recording.Format);
        Assert.Equal(8, recording.Channels.Length);
        Assert.Equal(73 * 250, recording.Channels[7].TimelineLength);
        Assert.Equal(
            "marked as 'EDF+C' but without an annotation signal; read as a plain continuous recording",
            Assert.Single(recording.Warnings).Message);
    }

    [SkippableFact]
    public void EventFileWithADummySampleHasAllItsAnnotations()
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/EDF.jl-tests/evt.bdf"), Plain);

        Assert.Equal(1081, recording.Annotations.Length);
        Assert.Equal("270.756 0 200", Line(recording.Annotations[0]));
        Assert.Equal(1081, recording.Channels[0].StoredLength);

        // Most of its annotations lie behind its dummy data: five are named, the rest counted.
        Assert.Equal(6, recording.Warnings.Length);
        Assert.StartsWith("annotation outside the data: ", recording.Warnings[5].Message, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void AHeaderWithoutDataIsRefused()
    {
        ChannelAuditException refusal = Assert.Throws<ChannelAuditException>(
            () => EdfReader.Open(RealFile.Path("edf/StagPoint-tests/Invalid_DataRecord_Count.edf"), Plain).Dispose());

        Assert.Equal("Invalid_DataRecord_Count.edf: no data: a record has 6002 bytes, 0 follow the header", refusal.Message);
        Assert.Equal("the recording was not saved, or only its header was copied: look for the complete file", refusal.Hint);
    }

    [SkippableFact]
    public void OddRecordingFieldsDoNotMatter()
    {
        using Recording recording = EdfReader.Open(RealFile.Path("edf/StagPoint-tests/PulseOximetry1.EDF"), Plain);

        Assert.Equal(681 * 4, recording.DurationS);
        Assert.Equal(
            ["unit '%' is not a voltage", "unit 'bpm' is not a voltage", "unit '%' is not a voltage", "annotation signal"],
            recording.Channels.Select(channel => channel.NotAudited),
            StringComparer.Ordinal);
        Assert.Equal(new Rational(1, 4), recording.Channels[0].Rate);
        Assert.Empty(recording.Warnings);
    }

    [SkippableTheory]
    [InlineData("emg_CustomBipolarFace/sub-01/emg/sub-01_task-talking_emg.edf", 6, 2000, 0.6)]
    [InlineData("emg_TwoHDsEMG/sub-01/emg/sub-01_task-isometric_emg.edf", 128, 2000, 0.8)]
    [InlineData("emg_MultiBodyParts/sub-01/emg/sub-01_task-mechPerturbations_emg.edf", 2, 2000, 0.7)]
    [InlineData("emg_ConcurrentIndependentUnits/sub-01/emg/sub-01_task-jumping_recording-bipolar_emg.edf", 1, 2000, 1.9)]
    public void EmgFilesOfTheStandardsExamplesAreRead(string relative, int channels, int rate, double bound)
    {
        using Recording recording = EdfReader.Open(RealFile.Path("bids/" + relative), Plain);

        Assert.Equal(channels, recording.Channels.Length);
        Assert.All(recording.Channels, channel => Assert.Null(channel.NotAudited));
        Assert.All(recording.Channels, channel => Assert.Equal(new Rational(rate, 1), channel.Rate));
        Assert.All(recording.Channels, channel => Assert.Equal((null, null), (channel.Prefilter.HighpassHz, channel.Prefilter.LowpassHz)));
        Assert.All(recording.Channels, channel => Assert.All(EdfCodes.Values(recording, channel.Index), value => Assert.InRange(value, -bound, bound)));
        Assert.Empty(recording.Warnings);
    }

    private static string Line(Annotation annotation) => string.Create(
        CultureInfo.InvariantCulture,
        $"{annotation.OnsetS:0.#######} {annotation.DurationS?.ToString("0.#######", CultureInfo.InvariantCulture) ?? "-"} {annotation.Text}");
}
