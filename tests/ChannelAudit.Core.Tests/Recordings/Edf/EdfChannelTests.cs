using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Units, calibration and roles of signals. Treatments: common practice.</summary>
public sealed class EdfChannelTests
{
    [Theory]
    [InlineData("uV", 1)]
    [InlineData("UV", 1)]
    [InlineData("\u00B5V", 1)]
    [InlineData("\u03BCV", 1)]
    [InlineData("\u00C2\u00B5V", 1)]
    [InlineData("microV", 1)]
    [InlineData("microvolts", 1)]
    [InlineData("mV", 1000)]
    [InlineData("MV", 1000)]
    [InlineData("V", 1e6)]
    [InlineData("v", 1e6)]
    [InlineData("Volts", 1e6)]
    [InlineData("nV", 1e-3)]
    public void SpellingsOfVoltagesAreKnown(string unit, double microvolts) => Assert.Equal(microvolts, VoltageUnit.Microvolts(unit));

    [Theory]
    [InlineData("")]
    [InlineData("%")]
    [InlineData("degC")]
    [InlineData("mm")]
    [InlineData("kOhm")]
    [InlineData("dV")]
    [InlineData("pulsev")]
    public void OtherUnitsAreNoVoltages(string unit) => Assert.Null(VoltageUnit.Microvolts(unit));

    [Theory]
    [InlineData("Status")]
    [InlineData("Trigger 1")]
    [InlineData("TRIG2")]
    [InlineData("Event marker")]
    [InlineData("DIN_TTL")]
    public void StatusSignalsAreToldByWholeWords(string label) => Assert.True(SignalLabel.IsStatus(label));

    [Theory]
    [InlineData("ECG")]
    [InlineData("EMG cheek")]
    [InlineData("Strigger")]
    [InlineData("Statusquo left")]
    [InlineData("")]
    public void OtherSignalsAreNotStatus(string label) => Assert.False(SignalLabel.IsStatus(label));

    [Fact]
    public void DuplicateAndBlankLabelsAreToldApartByPosition() => Assert.Equal(
        ["EMG", "EMG#3", "EMG#2", "EMG#4", "channel 5"],
        SignalLabel.MakeUnique(["EMG", "EMG", "EMG#2", "EMG", string.Empty]),
        StringComparer.Ordinal);

    [Theory]
    [InlineData("pmax 0", "-500", "not calibrated: physical minimum and maximum are equal")]
    [InlineData("dmin 0", "32767", "not calibrated: digital minimum and maximum are equal")]
    [InlineData("dmin 0", "-", "not calibrated: a digital limit is not a number")]
    [InlineData("pmin 0", "-", "not calibrated: a physical limit is not a number")]
    [InlineData("unit 0", "", "not calibrated: no unit")]
    [InlineData("unit 0", "%", "unit '%' is not a voltage")]
    [InlineData("label 0", "Status", "status or trigger signal")]
    public void AChannelThatCannotBeAuditedIsKeptWithItsCause(string field, string value, string cause)
    {
        using MadeEdf file = new();
        using Recording recording = file.Set(field, value).Open();

        Assert.Equal([cause, null, "annotation signal"], recording.Channels.Select(channel => channel.NotAudited), StringComparer.Ordinal);
        Assert.False(recording.Channels[0].IsMicrovolts);
        Assert.Equal(12, EdfCodes.Values(recording, 0).Length);
    }

    [Fact]
    public void AChannelWithoutSamplesIsKeptWithItsCause()
    {
        using MadeEdf file = new();
        file.Bytes = [.. file.Bytes[..1024], .. Enumerable.Repeat(file.Bytes[1032..1100], 3).SelectMany(bytes => bytes)];
        using Recording recording = file.Set("samples 0", "0").Open();

        Assert.Equal(["no samples", null, "annotation signal"], recording.Channels.Select(channel => channel.NotAudited), StringComparer.Ordinal);
        Assert.Empty(recording.Channels[0].Stretches);
    }

    [Theory]
    [InlineData("mV", -500_000.0, 500_000.0, true)]
    [InlineData("uV", -500.0, 500.0, true)]
    [InlineData("none", -32768.0, 32767.0, false)]
    public void TheSetupSaysWhatABlankUnitIs(string unit, double lower, double upper, bool isMicrovolts)
    {
        using MadeEdf file = new();
        using Recording recording = file.Set("unit 0", string.Empty).Open(new ReadOptions(Unit: unit));
        Channel channel = recording.Channels[0];

        Assert.Null(channel.NotAudited);
        Assert.Equal(lower, channel.LowerRail);
        Assert.Equal(upper, channel.UpperRail!.Value, 1e-6);
        Assert.Equal(isMicrovolts, channel.IsMicrovolts);
        Assert.Equal(isMicrovolts ? (upper - lower) / 65535 : 1, channel.Step, 1e-9);

        // A unit that the file states is never replaced.
        Assert.Equal(-500, recording.Channels[1].LowerRail);
    }

    [Fact]
    public void AnUnknownUnitOfTheSetupIsAUsageFault()
    {
        using MadeEdf file = new();
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => file.Open(new ReadOptions(Unit: "stone")).Dispose());

        Assert.Equal((FaultKind.Usage, "unit 'stone' is not known"), (fault.Kind, fault.Message));
    }

    [Fact]
    public void InvertedDigitalLimitsFlipTheSign()
    {
        using MadeEdf file = new();
        using Recording recording = file.Set("dmin 0", "32767").Set("dmax 0", "-32768").Open();

        Assert.Equal(-500, recording.Channels[0].LowerRail!.Value, 1e-9);
        Assert.Equal(500, recording.Channels[0].UpperRail!.Value, 1e-9);

        // Code 65535 below the top of the upright signal is its mirror.
        Assert.Equal(
            EdfCodes.Values(recording, 1).Select(value => Math.Round(-value, 6)),
            EdfCodes.Values(recording, 0).Select(value => Math.Round(value, 6)));
    }

    [Theory]
    [InlineData("HP:0.1Hz LP:75Hz N:50Hz", 0.1, 75.0, "50")]
    [InlineData("HP: DC, LP: 0", 0.0, null, "")]
    [InlineData("LP:   NaN Hz; HP:   NaN Hz; Notch: NaN", null, null, "")]
    [InlineData("HP:0,5 LP:0.5kHz", 0.5, 500.0, "")]
    [InlineData("HP:16Hz Rectification LP:0.7Hz", 16.0, 0.7, "")]
    [InlineData("hp=20 lp=450 n=50 n=100", 20.0, 450.0, "50 100")]
    [InlineData("HP:0.5,LP:100", 0.5, 100.0, "")]
    [InlineData("HP:0.3s LP:70Hz", null, 70.0, "")]
    [InlineData("HP:500mHz HP:10Hz LP:400Hz LP:300Hz", 10.0, 300.0, "")]
    [InlineData("None", null, null, "")]
    [InlineData("", null, null, "")]
    public void PrefilterFieldsAreRead(string text, double? highpass, double? lowpass, string notches)
    {
        Prefilter prefilter = PrefilterField.Parse(text);

        Assert.Equal((highpass, lowpass, text), (prefilter.HighpassHz, prefilter.LowpassHz, prefilter.Text));
        Assert.Equal(notches, string.Join(' ', prefilter.NotchesHz));
    }
}
