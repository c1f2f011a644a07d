using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class SessionRibbonLayoutTests
{
    private static readonly FigureSize[] Sizes = [FigureSize.Full, FigureSize.Small, new(400, 320), new(2400, 1350)];

    public static TheoryData<string, int> Cases()
    {
        TheoryData<string, int> cases = [];
        foreach ((string name, RecordingResult _) in RibbonSamples.All())
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
    public void NoTwoLabelsOverlap(string sample, int size)
    {
        LabelChecks.DoNotOverlap(Compose(sample, size));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void NoTextIsBelowFourteenPixelsOrOutsideThePicture(string sample, int size)
    {
        LabelChecks.AreLegibleAndInside(Compose(sample, size));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void TheFirstFindingIsTheLargestText(int size)
    {
        Picture picture = Compose("eight trials", size);

        Label title = picture.Labels[0];

        // Half of the full size is what a thumbnail of 800 x 450 shows.
        Assert.Equal("brow is rejected: 50 Hz mains 14.2 \u00B5V, in 5 of 8 trials, from 00:42 to the end", title.Text);
        Assert.True(title.Style.Size >= (size == 0 ? 32 : 20));
        Assert.All(picture.Labels.Skip(1), label => Assert.True(label.Style.Size < title.Style.Size));
    }

    [Fact]
    public void ALongLabelEndsInAnEllipsisAndLeavesRoomForTheFinding()
    {
        Label[] labels = [.. Compose("odd labels", 1).Labels];

        Assert.Contains(labels, label => label.Text.StartsWith("zygomaticus", StringComparison.Ordinal) && label.Text.EndsWith('\u2026'));
        Assert.Contains("samples missing", string.Join(' ', labels.Take(2).Select(label => label.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void SixtyFourChannelsAllHaveTheirRow()
    {
        Picture picture = Compose("64 channels", 0);

        Assert.Equal(64, picture.Labels.Count(label => label.Text.StartsWith("site ", StringComparison.Ordinal) && label.Text.Length == 7));
        Assert.True(picture.Height > FigureSize.Full.Height);
    }

    [Fact]
    public void BeyondSixtyFourTheWorstAreDrawnAndTheRestIsCounted()
    {
        Picture picture = Compose("80 channels", 0);

        Assert.Contains(picture.Labels, label => Is(label, "Not drawn: 16 channels (16 pass); the tables have all."));
        Assert.Contains(picture.Labels, label => Is(label, "site 77"));
    }

    [Fact]
    public void BlocksTooNarrowForALetterShareOneAboveThem()
    {
        Picture picture = Compose("400 trials", 0);

        // Trials 300 to 359 are joined sites: one letter on their bar, one above the run, one in the legend.
        Assert.Equal(3, picture.Labels.Count(label => Is(label, "B")));
        Assert.Equal(2 + 1, picture.Labels.Count(label => Is(label, "F")));
    }

    [Fact]
    public void OnlyLettersInUseAreExplained()
    {
        Label[] labels = [.. Compose("eight trials", 0).Labels];

        Assert.Contains(labels, label => Is(label, "clipping"));
        Assert.DoesNotContain(labels, label => Is(label, "pops"));
    }

    [Fact]
    public void WhatToDoIsSaidInFullWithItsCautionWhereThereIsRoom()
    {
        string[] full = [.. Compose("peaks", 0).Labels.Select(label => label.Text)];

        Assert.Contains("Likely cause: the gain is too high.", full, StringComparer.Ordinal);
        Assert.Contains(
            "What to do: Lower the gain or widen the input range; with little headroom check ground and contact first. Mind skin and eyes: local protocol comes first.",
            full,
            StringComparer.Ordinal);
        Assert.DoesNotContain(Compose("peaks", 1).Labels, label => label.Text.StartsWith("What to do", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void ACautionIsNeverCut(string sample, int size)
    {
        string text = string.Join(' ', Compose(sample, size).Labels.Take(6).Select(label => label.Text));

        // Only the advice about missing samples has none.
        bool needsCaution = text.Contains("What to do: ", StringComparison.Ordinal) && !text.Contains("cannot be repaired.", StringComparison.Ordinal);
        Assert.Equal(needsCaution, text.Contains("protocol comes first.", StringComparison.Ordinal));
    }

    [Fact]
    public void APassHasNothingToDo() => Assert.DoesNotContain(
        Compose("all pass", 0).Labels, label => label.Text.StartsWith("What to do", StringComparison.Ordinal));

    [Fact]
    public void ASecondFaultIsInTheLineOfCounts() => Assert.Contains(
        Compose("peaks", 0).Labels,
        label => Is(label, "3 channels: 1 reject, 1 questionable, 1 pass \u00B7 also: missing samples, flat signal \u00B7 29 trials \u00B7 03:00 long \u00B7 harbour+bright"));

    [Fact]
    public void FewerFaultsAreNamedBeforeTheNameOfTheRecordingIsCut() => Assert.Contains(
        Compose("eight trials", 1).Labels,
        label => label.Text.Contains(" \u00B7 also: clipping", StringComparison.Ordinal)
            && label.Text.EndsWith(" and more \u00B7 8 trials \u00B7 02:00 long \u00B7 harbour+session-03", StringComparison.Ordinal));

    [Fact]
    public void ThePictureIsTheSameUnderACommaCulture()
    {
        RecordingResult recording = RibbonSamples.EightTrials();

        byte[] comma = CommaCulture.Run(() => SessionRibbon.Render(recording, FigureSize.Small));

        Assert.Equal(SessionRibbon.Render(recording, FigureSize.Small), comma);
    }

    private static bool Is(Label label, string text) => string.Equals(label.Text, text, StringComparison.Ordinal);

    private static Picture Compose(string sample, int size) =>
        SessionRibbon.Compose(RibbonSamples.All().First(one => string.Equals(one.Name, sample, StringComparison.Ordinal)).Recording, Sizes[size]);
}
