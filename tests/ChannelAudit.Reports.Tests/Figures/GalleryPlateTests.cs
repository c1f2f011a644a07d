using System.Collections.Immutable;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class GalleryPlateTests
{
    public static TheoryData<string> Codes => [.. GallerySubjects.All.Select(subject => subject.Code)];

    /// <summary>A plate as its file holds it.</summary>
    internal static byte[] Plate(string code)
    {
        (GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) = Exhibits(code);
        return GalleryPlate.Render(subject, exhibits, FigureSize.Full);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void LabelsAreLegibleInsideThePictureAndApart(string code)
    {
        (GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) = Exhibits(code);
        Picture picture = GalleryPlate.Compose(subject, exhibits, FigureSize.Full);

        Assert.Equal((1600, 900), (picture.Width, picture.Height));
        LabelChecks.AreLegibleAndInside(picture);
        LabelChecks.DoNotOverlap(picture);
        Assert.DoesNotContain(picture.Labels, label => label.Text.EndsWith('\u2026'));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryColumnSaysWhatTheAuditSaid(string code)
    {
        (GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) = Exhibits(code);
        string[] words = [.. GalleryPlate.Compose(subject, exhibits, FigureSize.Full).Labels.Select(label => label.Text)];

        Assert.Equal(1, words.Count(text => string.Equals(text, "The fault", StringComparison.Ordinal)));
        Assert.Equal(exhibits.Length - 1, words.Count(text => text.StartsWith("Resembles it, but is ", StringComparison.Ordinal)));
        foreach (Grade grade in exhibits.Select(exhibit => exhibit.Cell.Verdict).Distinct())
        {
            string word = VerdictWords.Code(grade);
            Assert.Equal(
                exhibits.Count(exhibit => exhibit.Cell.Verdict == grade),
                words.Count(text => string.Equals(text, word, StringComparison.Ordinal) || text.StartsWith(word + ":", StringComparison.Ordinal) || text.StartsWith(word + ";", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void AnotherVerdictChangesTheCaptionAndThePage()
    {
        (GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) = Exhibits("clipping");
        GalleryExhibit passed = exhibits[0] with { Recording = exhibits[1].Recording };

        Picture picture = GalleryPlate.Compose(subject, exhibits.SetItem(0, passed), FigureSize.Full);

        Assert.DoesNotContain(picture.Labels, label => label.Text.StartsWith("reject", StringComparison.Ordinal));
        Assert.NotEqual(GalleryPage.Of([(subject, exhibits)]), GalleryPage.Of([(subject, exhibits.SetItem(0, passed))]), StringComparer.Ordinal);
    }

    [Fact]
    public void TheSameSubjectGivesTheSameBytes()
    {
        (GallerySubject subject, ImmutableArray<GalleryExhibit> exhibits) = Exhibits("dropout");

        Assert.True(GalleryPlate.Render(subject, exhibits, FigureSize.Full).AsSpan().SequenceEqual(GalleryPlate.Render(subject, exhibits, FigureSize.Full)));
    }

    private static (GallerySubject Subject, ImmutableArray<GalleryExhibit> Exhibits) Exhibits(string code)
    {
        GallerySubject subject = GallerySubjects.All.Single(one => string.Equals(one.Code, code, StringComparison.Ordinal));
        return (subject, GalleryAudit.Of(subject, CancellationToken.None));
    }
}
