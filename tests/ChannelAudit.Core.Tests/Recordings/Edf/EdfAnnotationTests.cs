using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Annotations as they should not be written, kept and flagged; <c>|</c> is byte 20, <c>^</c> byte 21, <c>_</c> byte 0.</summary>
public sealed class EdfAnnotationTests
{
    [Theory]
    [InlineData("+0||_+1^0.5|smile|_", "1 0.5 smile", null)]
    [InlineData("+0||_+1|smile|frown|_", "1 - smile;1 - frown", null)]
    [InlineData("+0||smile|_", "0 - smile", null)]
    [InlineData("+0||____+1^0.5|smile|_", "1 0.5 smile", null)]
    [InlineData("+0||_+1^|smile|_", "1 - smile", null)]
    [InlineData("+0||_+1^2||_", "1 2 ", null)]
    [InlineData("+0||_+1 0.5|smile|_", "1 0.5 smile", "annotation: no mark between onset and duration in '+1 0.5'; split at the space")]
    [InlineData("+0||_1|smile|_", "1 - smile", "annotation: onset '1' has no sign; taken as positive")]
    [InlineData("+0||_+1|smile_", "1 - smile", "annotation: a text is not closed; kept")]
    [InlineData("+0||_+1^2_", "1 2 ", "annotation: no text follows the onset '+1'; kept")]
    [InlineData("+0||_+x|smile|_", "", "annotation: onset '+x' is not a time; left out")]
    [InlineData("+0||_+1^-3|smile|_", "1 - smile", "annotation: duration '-3' is not a length of time; kept without one")]
    [InlineData("+0||_-1|early|_", "-1 - early", "annotation at -1 s lies outside the data (0 to 3 s); kept")]
    [InlineData("+0||_+9|late|_", "9 - late", "annotation at 9 s lies outside the data (0 to 3 s); kept")]
    [InlineData("+0||_+1|caf\u00E9|_", "1 - caf\u00E9", "annotation: a text is not valid UTF-8; read as Latin-1")]
    [InlineData("+0||_+1|caf\u00C3\u00A9|_", "1 - caf\u00E9", null)]
    public void AnnotationsAreKeptAndFlagged(string bytes, string expected, string? warning)
    {
        using MadeEdf file = new();
        using Recording recording = file.SetAnnotations(0, bytes).Open();

        Assert.Equal(expected, string.Join(';', recording.Annotations.Select(Line)));
        Assert.Equal(warning, recording.Warnings.SingleOrDefault()?.Message);
        Assert.Equal(warning is null ? null : "record 1", recording.Warnings.SingleOrDefault()?.Place);
    }

    [Fact]
    public void AnAnnotationThatRunsToTheEndOfItsRecordIsKeptAndFlagged()
    {
        using MadeEdf file = new();
        using Recording recording = file.SetAnnotations(2, "+2||_+2.5|" + new string('x', 49) + "|").Open();

        Assert.Equal(new string('x', 49), recording.Annotations[0].Text);
        Assert.Equal("annotation: not closed before the end of the record; kept", Assert.Single(recording.Warnings).Message);
    }

    [Fact]
    public void ManyWarningsOfOneKindAreCounted()
    {
        using MadeEdf file = new(new([MadeEdf.Signal("EMG")], 12)
        {
            Annotations = [.. Enumerable.Range(0, 12).Select(i => new Annotation(100 + i, null, "late"))],
        });
        using Recording recording = file.Open();

        Assert.Equal(12, recording.Annotations.Length);
        Assert.Equal(6, recording.Warnings.Length);
        Assert.Equal(new Warning("made.edf", "up to record 12", "annotation outside the data: 7 more"), recording.Warnings[5]);
    }

    // Damage that goes on and on: only the faults that are shown are put into words, and no stamp becomes a text.
    [Theory]
    [InlineData("x_")]
    [InlineData("1 z_")]
    [InlineData("+1^z_")]
    [InlineData("+1000000000000^2|_")]
    public void FaultsInEveryFewBytesTakeLessMemoryThanTheFile(string fault)
    {
        using MadeEdf file = new(new([MadeEdf.Signal("EMG")], 10_000));
        byte[] bytes = Encoding.Latin1.GetBytes(fault.Replace('|', (char)20).Replace('^', (char)21).Replace('_', (char)0));
        for (int i = 768; i < file.Bytes.Length; i++)
        {
            file.Bytes[i] = bytes[i % bytes.Length];
        }

        file.Open().Dispose();
        long before = GC.GetAllocatedBytesForCurrentThread();
        using Recording recording = file.Open();

        // A window of 1 MiB is there in any case.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, (2 << 20) + file.Bytes.Length);
        Assert.InRange(recording.Warnings.Length, 6, 12);
    }

    private static string Line(Annotation annotation) => string.Create(
        CultureInfo.InvariantCulture,
        $"{annotation.OnsetS:0.#######} {annotation.DurationS?.ToString("0.#######", CultureInfo.InvariantCulture) ?? "-"} {annotation.Text}");
}
