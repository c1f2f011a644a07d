using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class PairSheetTests
{
    private static readonly FigureSize[] Sizes = [FigureSize.Full, FigureSize.Small, new(2400, 1350)];

    public static TheoryData<string, int> Cases()
    {
        TheoryData<string, int> cases = [];
        foreach ((string name, RecordingResult _, PairResult _) in PairSamples.All)
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

    [Theory]
    [InlineData("joined", "^cheek and eye are joined: they carry one signal, whole recording$", "^Why: Correlation at rest 0\\.\\d\\d \\(limit 0\\.60\\); above 300 Hz")]
    [InlineData("joined late", "^cheek and eye are joined: they carry one signal, from 01:(39|40|41) to the end$", "^Why: In this part: ")]
    [InlineData("one electrode", "^cheek and eye may be joined at one electrode, whole recording$", "suspected only")]
    [InlineData("crosstalk", "^Crosstalk between cheek and eye, no sign of a joint$", "^Why: In contractions the correlation is 0\\.[6-9]\\d, but at rest above 300 Hz only 0\\.0\\d, below 0\\.12")]
    public void TheTitleSaysWhatWasDecidedAndWhy(string sample, string title, string why)
    {
        string[] labels = [.. Compose(sample, FigureSize.Full).Labels.Select(label => label.Text)];

        Assert.Matches(title, labels[0]);
        Assert.Matches(why, string.Join(' ', labels.Skip(1).Take(2)));
    }

    [Fact]
    public void TheCorrelationRisesWhereTheJointBegins()
    {
        (RecordingResult recording, PairResult pair) = PairSamples.Of("joined late");
        using Pixels pixels = new(PairSheet.Render(recording, pair, FigureSize.Full));
        Label one = PairSheet.Compose(recording, pair, FigureSize.Full).Labels.First(label => string.Equals(label.Text, "1", StringComparison.Ordinal));
        Label half = PairSheet.Compose(recording, pair, FigureSize.Full).Labels.First(label => string.Equals(label.Text, "0.5", StringComparison.Ordinal));
        float left = half.Area.Right + 6;

        // Discs of rest above the middle between 0.5 and 1, in the first minute and in the last.
        int Discs(double fromS, double toS) => pixels.Inside(Area.Between(X(fromS), one.Area.Top, X(toS), half.Area.Top), Inks.Ink);
        float X(double seconds) => left + (float)((1568 - left) * seconds / recording.DurationS);

        Assert.Equal(0, Discs(2, 60));
        Assert.True(Discs(recording.DurationS - 20, recording.DurationS - 2) > 500);
    }

    [Fact]
    public void WhatIsMissingIsSaid()
    {
        string[] labels = [.. Compose("nothing to draw", FigureSize.Full).Labels.Select(label => label.Text)];

        Assert.Contains("no contraction, no rest", labels, StringComparer.Ordinal);
        Assert.Contains("too little rest and no contraction", labels, StringComparer.Ordinal);
    }

    [Fact]
    public void TheSamePairGivesTheSameBytes()
    {
        (RecordingResult recording, PairResult pair) = PairSamples.Of("joined");

        Assert.True(PairSheet.Render(recording, pair, FigureSize.Small).AsSpan().SequenceEqual(PairSheet.Render(recording, pair, FigureSize.Small)));
    }

    [Fact]
    public void APairWithoutAViewIsRefused()
    {
        (RecordingResult recording, PairResult pair) = PairSamples.Of("joined");

        Assert.Throws<ArgumentException>(() => PairSheet.Render(recording, pair with { View = null }, FigureSize.Full));
    }

    [Fact]
    public void PairsThatNobodyAsksAboutHaveNoSheet() =>
        Assert.Equal(2, PairSamples.Of("joined").Recording.Pairs.Count(pair => pair.View is null));

    private static Picture Compose(string name, FigureSize size)
    {
        (RecordingResult recording, PairResult pair) = PairSamples.Of(name);
        return PairSheet.Compose(recording, pair, size);
    }
}
