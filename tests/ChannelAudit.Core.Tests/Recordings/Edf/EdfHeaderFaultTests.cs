using System.Text;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Damaged and careless headers: what is refused, what is read all the same, and the exact words. Treatments: common practice.</summary>
public sealed class EdfHeaderFaultTests
{
    [Theory]
    [InlineData("length", "abc", "made.edf, header: header length 'abc' is not a whole number")]
    [InlineData("length", "1024.0", "made.edf, header: header length '1024.0' is not a whole number")]
    [InlineData("signals", "", "made.edf, header: number of signals '' is not a whole number")]
    [InlineData("signals", "0", "made.edf, header: number of signals '0' is not possible")]
    [InlineData("signals", "-2", "made.edf, header: number of signals '-2' is not possible")]
    [InlineData("signals", "9999", "made.edf, header: the file has 1252 bytes, its header needs 2560000")]
    [InlineData("samples 0", "4.5", "made.edf, header, channel 1: number of samples in a record '4.5' is not a whole number")]
    [InlineData("samples 1", "-4", "made.edf, header, channel 2: number of samples in a record '-4' is not possible")]
    [InlineData("samples 1", "99999999", "made.edf: no data: a record has 200000066 bytes, 228 follow the header")]
    [InlineData("duration", "one", "made.edf, header: record duration 'one' is not a time in seconds")]
    [InlineData("duration", "-1", "made.edf, header: record duration '-1' is not a time in seconds")]
    [InlineData("duration", "0", "made.edf, header: record duration is 0 although there are signals with samples: their sampling rate is unknown")]
    public void ADamagedFieldIsRefusedInTheseWords(string field, string value, string message)
    {
        using MadeEdf file = new();
        ChannelAuditException refusal = file.Set(field, value).Refusal();

        Assert.Equal(message, refusal.Message);
        Assert.Equal(FaultKind.Recording, refusal.Kind);
        Assert.NotEmpty(refusal.Hint);
    }

    [Theory]
    [InlineData("length", "768", "made.edf, header: header length is stated as 768 bytes; 1024 by the number of signals, and so it was read")]
    [InlineData("records", "-1", "made.edf, header: number of records is stated as '-1'; the file holds 3, and so many were read")]
    [InlineData("records", "2", "made.edf, header: number of records is stated as '2'; the file holds 3, and so many were read")]
    [InlineData("records", "", "made.edf, header: number of records is stated as ''; the file holds 3, and so many were read")]
    [InlineData("pmin 0", "-500,5", "made.edf, header, channel 1: physical minimum '-500,5' has a decimal comma; read as a dot")]
    [InlineData("pmax 1", "x", "made.edf, header, channel 2: physical maximum 'x' is not a number; the signal is taken as not calibrated")]
    [InlineData("dmax 1", "", "made.edf, header, channel 2: digital maximum '' is not a number; the signal is taken as not calibrated")]
    [InlineData("dmin 0", "99", "made.edf, header, channel 1: digital minimum 99 is above the maximum -99; taken as inverted polarity")]
    [InlineData("dmin 1", "-99999", "made.edf, header, channel 2: digital limits -99999 to 32767 do not fit 16-bit samples; taken as stated")]
    [InlineData("label 0", "EMG \u00E9", "made.edf, header, channel 1: label has characters outside ASCII; read as 'EMG \u00E9'")]
    [InlineData("unit 0", "\u00B5V", "made.edf, header, channel 1: unit has characters outside ASCII; read as '\u00B5V'")]
    [InlineData("unit 0", "\u00C2\u00B5V", "made.edf, header, channel 1: unit has characters outside ASCII; read as '\u00B5V'")]
    [InlineData("unit 0", "\u00CE\u00BCV", "made.edf, header, channel 1: unit has characters outside ASCII; read as '\u03BCV'")]
    [InlineData("duration", "1,0", "made.edf, header: record duration '1,0' has a decimal comma; read as a dot")]
    [InlineData("reserved", "", "made.edf, header: has an annotation signal but is not marked as continuous or discontinuous; read as continuous")]
    public void ACarelessFieldIsReadWithTheseWords(string field, string value, string warning)
    {
        using MadeEdf file = new();
        if (string.Equals(value, "99", StringComparison.Ordinal))
        {
            file.Set("dmax 0", "-99");
        }

        Assert.Equal(warning, Assert.Single(file.Set(field, value).Warnings()));
    }

    [Fact]
    public void AFileCutInsideItsHeaderIsRefused()
    {
        using MadeEdf file = new();
        byte[] whole = file.Bytes;

        file.Bytes = whole[..100];
        Assert.Equal("made.edf, header: the file has 100 bytes, its header needs 256", file.Refusal().Message);
        file.Bytes = whole[..1000];
        Assert.Equal("made.edf, header: the file has 1000 bytes, its header needs 1024", file.Refusal().Message);
        file.Bytes = whole[..1024];
        Assert.Equal("made.edf: no data: a record has 76 bytes, 0 follow the header", file.Refusal().Message);
    }

    [Fact]
    public void ATruncatedLastRecordIsLeftOutWithAWarning()
    {
        using MadeEdf file = new();
        file.Bytes = file.Bytes[..^10];

        Assert.Equal(
            [
                "made.edf, header: number of records is stated as '3'; the file holds 2, and so many were read",
                "made.edf, record 3: the last record has 66 of 76 bytes; left out",
            ],
            file.Warnings());
        using Recording recording = file.Open();
        Assert.Equal(8, recording.Channels[0].StoredLength);
        Assert.Equal([0, 10, 20, 30, 40, 50, 60, 70], EdfCodes.Values(recording, 0).Select(value => Math.Round(value, 1)));
    }

    [Fact]
    public void RecordsWithoutAnySampleAreRefused()
    {
        using MadeEdf file = new();
        ChannelAuditException refusal = file.Set("samples 0", "0").Set("samples 1", "0").Set("samples 2", "0").Refusal();

        Assert.Equal("made.edf, header: no signal has any sample in a record", refusal.Message);
    }

    [Fact]
    public void ADiscontinuousFileWithoutRecordTimesIsRefused()
    {
        const string words = "made.edf, header: the recording is marked as discontinuous but no annotation says when its records start";
        using MadeEdf unlabelled = new();
        using MadeEdf blank = new();
        blank.SetAnnotations(0, string.Empty).SetAnnotations(1, string.Empty).SetAnnotations(2, string.Empty);

        Assert.Equal(words, unlabelled.Set("reserved", "EDF+D").Set("label 2", "EMG eye").Refusal().Message);
        Assert.Equal(words, blank.Set("reserved", "EDF+D").Refusal().Message);
    }

    [Fact]
    public void BlankDatesAndColonsInTimesDoNotMatter()
    {
        using MadeEdf file = new();
        Encoding.ASCII.GetBytes("        12:30:59").CopyTo(file.Bytes, 168);

        Assert.Empty(file.Warnings());
    }

    [Fact]
    public void RandomDamageNeverEscapesAsAnythingButARefusal()
    {
        // A repeatable walk over every byte of the file; the values are the ones that break number parsing most often.
        using MadeEdf file = new();
        byte[] whole = file.Bytes;
        byte[] values = [0, (byte)' ', (byte)'-', (byte)'9', (byte)'.', 255];
        int refused = 0;
        for (int i = 0; i < whole.Length; i++)
        {
            file.Bytes = [.. whole];
            file.Bytes[i] = values[i % values.Length];
            try
            {
                file.Open().Dispose();
            }
            catch (ChannelAuditException)
            {
                refused++;
            }
        }

        Assert.InRange(refused, 1, 200);
    }
}
