using System.Globalization;
using System.Text;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Rules of the published format: Kemp et al. 1992, Electroenceph Clin Neurophysiol 82:391; Kemp and Olivan 2003, Clin Neurophysiol 114:1755.</summary>
public sealed class EdfFormatRuleTests
{
    [Fact]
    public void CodeZeroIsHalfAStepAboveZeroWithSymmetricLimits()
    {
        // The affine rule by hand: -500 + 32768 x 1000 / 65535 = 500 / 65535.
        SampleScale scale = SampleScale.Physical(Signal(-500, 500, -32768, 32767), 1)!.Value;

        Assert.Equal(500.0 / 65535, scale.ValueOf(0), 1e-12);
        Assert.Equal(0.0076295, scale.ValueOf(0), 1e-6);
    }

    [Fact]
    public void InvertedLimitsFlipTheSignWithoutAnError()
    {
        SampleScale upright = SampleScale.Physical(Signal(-500, 500, -32768, 32767), 1)!.Value;
        SampleScale inverted = SampleScale.Physical(Signal(500, -500, -32768, 32767), 1)!.Value;

        Assert.True(inverted.Gain < 0);
        Assert.All([-32768, -1, 0, 1, 32767], code => Assert.Equal(-upright.ValueOf(code), inverted.ValueOf(code), 1e-9));
    }

    [Fact]
    public void TheAnnotationOfThePublishedTextIsReadExactly()
    {
        // The example of the EDF+ text: onset 1800.2 s, duration 25.5 s.
        EdfWarnings warnings = new("made.edf");
        List<Tal> lists = [];
        new TalParser(warnings).Parse(Encoding.ASCII.GetBytes("+1800.2\u001525.5\u0014Apnea\u0014\0"), 0, lists);

        Tal list = Assert.Single(lists);
        Assert.Equal((1800.2m, 25.5m, "Apnea"), (list.OnsetS, list.DurationS, Assert.Single(list.Texts)));
        Assert.Empty(warnings.ToImmutable());
    }

    [Fact]
    public void RecordsAtZeroOneAndFiveSecondsLeaveOneGap()
    {
        // EDF+ text 2.2.4; records of 1 s at 4 Hz: the gap is 2 s to 5 s.
        using MadeEdf file = new(MadeEdf.Small() with { RecordStartsS = [0, 1, 5] });
        using Recording recording = file.Open();

        Assert.Equal("EDF+D", recording.Format);
        Assert.Equal([new(0, 8, 0), new(20, 4, 8)], recording.Channels[0].Stretches.ToArray());
        Assert.Equal(24, recording.Channels[0].TimelineLength);
        Assert.Equal(6, recording.DurationS);
        Assert.Empty(recording.Warnings);
    }

    [Fact]
    public void RailsEqualTheSamplesAtThemWhateverTheUnit()
    {
        foreach (string unit in (string[])["uV", "mV", "V"])
        {
            using MadeEdf file = new(new EdfContent(
                [new EdfSignalContent("EMG", 0.3, -0.7, 2, (_, samples) => (samples[0], samples[1]) = (-9, 9)) { Unit = unit }], 1));
            using Recording recording = file.Open();
            double[] values = EdfCodes.Values(recording, 0);

            Assert.Equal(values[0], recording.Channels[0].LowerRail);
            Assert.Equal(values[1], recording.Channels[0].UpperRail);
        }
    }

    [Fact]
    public void FractionalDurationsGiveExactRates()
    {
        using MadeEdf file = new();
        using Recording recording = file.Set("duration", "0.30").SetAnnotations(1, "+0.3||_").SetAnnotations(2, "+0.6||_").Open();

        Assert.Equal(new Rational(40, 3), recording.Channels[0].Rate);
        Assert.Equal(0.9, recording.DurationS, 1e-15);
    }

    [Fact]
    public void ACommaCultureReadsTheSameNumbers()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NegativeSign = "~";
        try
        {
            CultureInfo.CurrentCulture = comma;
            using MadeEdf file = new(new EdfContent([new EdfSignalContent("EMG", -1.5, 2.25, 1, (_, samples) => samples[0] = -9)], 1) { RecordDurationS = 0.5m });
            using Recording recording = file.Open();

            Assert.Equal((-1.5, 2.0), (recording.Channels[0].LowerRail, recording.Channels[0].Rate.Value));
            Assert.Empty(recording.Warnings);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void NothingOfTheParticipantIsKept()
    {
        using MadeEdf file = new();
        Encoding.ASCII.GetBytes("MCH-0234567 F 02-MAY-1951 Doe_Jane".PadRight(80) + "Startdate 02-MAR-2002 Doe_Jane".PadRight(80)).CopyTo(file.Bytes, 8);
        using Recording recording = file.Open();

        string everything = System.Text.Json.JsonSerializer.Serialize(new { recording.Format, recording.Channels, recording.Annotations, recording.Warnings });
        Assert.DoesNotContain("Jane", everything, StringComparison.Ordinal);
        Assert.DoesNotContain("1951", everything, StringComparison.Ordinal);
    }

    private static EdfSignalHeader Signal(double pmin, double pmax, int dmin, int dmax) => new("EMG", "uV", pmin, pmax, dmin, dmax, string.Empty, 1, 0);
}
