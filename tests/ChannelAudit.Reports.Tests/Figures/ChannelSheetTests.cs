using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class ChannelSheetTests
{
    private static readonly FigureSize[] Sizes = [FigureSize.Full, FigureSize.Small, new(2400, 1350)];

    public static TheoryData<string, int> Cases()
    {
        TheoryData<string, int> cases = [];
        foreach ((string name, RecordingResult _, ChannelResult _) in SheetSamples.All())
        {
            for (int size = 0; size < Sizes.Length; size++)
            {
                cases.Add(name, size);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void LabelsAreLegibleInsideThePictureAndApart(string sample, int size)
    {
        Picture picture = Compose(sample, Sizes[size]);

        LabelChecks.AreLegibleAndInside(picture);
        LabelChecks.DoNotOverlap(picture);
    }

    [Fact]
    public void TheTitleSaysWhatIsWrongWithItsNumberAndWhen()
    {
        Picture picture = Compose("faulty", FigureSize.Full);

        Assert.Matches("^cheek is questionable: 50 Hz mains \\d+(\\.\\d+)? µV, in \\d+ of 21 trials, from 02:0\\d to the end$", picture.Labels[0].Text);
        Assert.StartsWith("Likely cause: ", picture.Labels[1].Text, StringComparison.Ordinal);
        Assert.EndsWith("; no other channel shows it.", picture.Labels[1].Text, StringComparison.Ordinal);
        Assert.Contains("local protocol", picture.Labels[2].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ForAGlanceTheTitleIsStillThere() =>
        Assert.InRange(Compose("faulty", FigureSize.Small).Labels[0].Style.Size, 18, 24);

    [Fact]
    public void TheWorstTrialIsEnlargedAndItsDeadSecondIsMarked()
    {
        Picture picture = Compose("flat", FigureSize.Full);

        Assert.Contains(picture.Labels, label => label.Text.StartsWith("Trial 14, the worst: reject, flat signal", StringComparison.Ordinal));

        // Once above the whole trace, once above the trial.
        Assert.Equal(2, picture.Labels.Count(label => string.Equals(label.Text, "F", StringComparison.Ordinal)));
    }

    [Fact]
    public void AStretchHasItsLetterOnceHoweverManyOfItsTrialsShowTheSame()
    {
        (_, RecordingResult recording, ChannelResult channel) = Sample("faulty");
        Finding drift = channel.Cells.SelectMany(cell => cell.Findings).First(finding => finding.Grade > Verdicts.Grade.Pass) with
        {
            Reason = ReasonCode.Drift,
            Grade = Verdicts.Grade.Questionable,
            Trial = null,
            FromS = 0,
            ToS = recording.DurationS,
        };
        ChannelResult drifting = channel with
        {
            Findings = [drift],
            Cells = [.. channel.Cells.Select((cell, i) => cell with { Findings = [drift with { Trial = cell.Trial, FromS = 2 + (6 * i), ToS = 6 + (6 * i) }] })],
        };

        Picture picture = ChannelSheet.Compose(recording with { Channels = recording.Channels.SetItem(0, drifting) }, drifting, FigureSize.Full);

        // One over the whole trace, one over the trial that is enlarged.
        Assert.Equal(2, picture.Labels.Count(label => label.Text is "R"));
    }

    [Fact]
    public void AFaultIsTintedWhereItIsAndNowhereElse()
    {
        (_, RecordingResult recording, ChannelResult channel) = Sample("flat");
        using Pixels pixels = new(ChannelSheet.Render(recording, channel, FigureSize.Full));
        double fromS = channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings)).First(finding => finding.Trial == 14).FromS;
        float left = PlotLeft(recording, channel);

        float X(double seconds) => left + (float)((1568 - left) * seconds / recording.DurationS);

        Assert.True(pixels.InColumn(X(fromS + 1.5), Inks.RejectTint) > 80);
        Assert.Equal(0, pixels.InColumn(X(fromS - 8), Inks.RejectTint));
    }

    [Fact]
    public void WhatComesAndGoesIsTintedInItsTrialsAndNotBetweenThem()
    {
        (_, RecordingResult recording, ChannelResult sample) = Sample("flat");
        Finding one = sample.Cells[13].Findings[0];
        Finding other = one with { Trial = 4, FromS = one.FromS - 60, ToS = one.ToS - 60 };
        ChannelResult channel = sample with
        {
            Findings = [one with { Trial = null, FromS = other.FromS, ToS = one.ToS }],
            Cells = sample.Cells.SetItem(3, sample.Cells[3] with { Findings = [other] }),
        };
        using Pixels pixels = new(ChannelSheet.Render(recording, channel, FigureSize.Full));
        float left = PlotLeft(recording, channel);

        float X(double seconds) => left + (float)((1568 - left) * seconds / recording.DurationS);

        Assert.True(pixels.InColumn(X(one.FromS + 1.5), Inks.RejectTint) > 80);
        Assert.True(pixels.InColumn(X(other.FromS + 1.5), Inks.RejectTint) > 80);
        Assert.Equal(0, pixels.InColumn(X(one.FromS - 8), Inks.RejectTint));
    }

    [Fact]
    public void TheSameChannelGivesTheSameBytes()
    {
        (_, RecordingResult recording, ChannelResult channel) = Sample("faulty");

        Assert.True(ChannelSheet.Render(recording, channel, FigureSize.Small).AsSpan().SequenceEqual(ChannelSheet.Render(recording, channel, FigureSize.Small)));
    }

    [Fact]
    public void AChannelWithoutAViewIsRefused()
    {
        (_, RecordingResult recording, ChannelResult channel) = Sample("faulty");

        Assert.Throws<ArgumentException>(() => ChannelSheet.Render(recording, channel with { View = null }, FigureSize.Full));
    }

    private static (string Name, RecordingResult Recording, ChannelResult Channel) Sample(string name) =>
        SheetSamples.All().First(sample => string.Equals(sample.Name, name, StringComparison.Ordinal));

    private static Picture Compose(string name, FigureSize size)
    {
        (_, RecordingResult recording, ChannelResult channel) = Sample(name);
        return ChannelSheet.Compose(recording, channel, size);
    }

    // The zero of the time axis stands under its own line.
    private static float PlotLeft(RecordingResult recording, ChannelResult channel)
    {
        Label zero = ChannelSheet.Compose(recording, channel, FigureSize.Full).Labels.First(label => string.Equals(label.Text, "00:00", StringComparison.Ordinal));
        return zero.Area.CentreX;
    }
}
