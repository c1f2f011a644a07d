using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Tests.Figures;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Digests;

/// <summary>How many verdicts of a run hang on the limits: two recordings, counted by hand.</summary>
public sealed class SensitivityTests
{
    private static readonly ImmutableArray<MovedLimits> First =
    [
        Row("all", 1, new GradeCounts(80, 10, 10)), Row("all", 0.5, new GradeCounts(60, 18, 22)), Row("all", 0.75, new GradeCounts(75, 13, 12)),
        Row("all", 1.25, new GradeCounts(82, 9, 9)), Row("all", 2, new GradeCounts(88, 5, 7)),
        Row("line-noise", 0.5, new GradeCounts(70, 11, 19)), Row("line-noise", 0.75, new GradeCounts(78, 11, 11)),
        Row("line-noise", 1.25, new GradeCounts(81, 10, 9)), Row("line-noise", 2, new GradeCounts(84, 9, 7)),
    ];

    private static readonly ImmutableArray<MovedLimits> Second =
    [
        Row("all", 1, new GradeCounts(50, 0, 0)), .. MovedLimits.Factors.Select(factor => Row("all", factor, new GradeCounts(50, 0, 0))),
        .. MovedLimits.Factors.Select(factor => Row("drift", factor, factor < 1 ? new GradeCounts(48, 2, 0) : new GradeCounts(50, 0, 0))),
    ];

    [Fact]
    public void ARecordingInWhichAReasonChangesNothingCountsAsItIs()
    {
        SensitivityTally tally = Tally();

        Assert.Equal(new GradeCounts(130, 10, 10), tally.InForce.Trials);
        Assert.Equal(new GradeCounts(120, 11, 19), tally.Row("line-noise", 0.5).Trials);
        Assert.Equal(new GradeCounts(128, 12, 10), tally.Row("drift", 0.5).Trials);
        Assert.Equal(tally.InForce.Trials, tally.Row("clipping", 2).Trials);
    }

    [Fact]
    public void ReasonsThatMoveRejectedTrialsComeFirst() => Assert.Equal(["line-noise", "drift"], Tally().ReasonsThatMatter.AsEnumerable(), StringComparer.Ordinal);

    [Fact]
    public void WordsSayWhatHangsOnWhichLimits() => Assert.Equal(
        "By the limits in force 10 are rejected of 150 trials (each counted once a channel). Limits half as large would reject 12 more; limits twice as large would reject 3 fewer. "
        + "Most hangs on mains: moved alone, half its limits would reject 9 more, twice its limits would reject 3 fewer. "
        + "Moved alone, only baseline drift would change other trials, and none that is rejected.",
        string.Join(' ', SensitivityWords.Sentences(Tally())));

    [Fact]
    public void LimitsThatChangeChannelsAloneAreSaidApartAndInNoTableOfTrials()
    {
        SensitivityTally tally = Tally();
        tally.Add(
        [
            Row("all", 1, new GradeCounts(50, 0, 0)), .. MovedLimits.Factors.Select(factor => Row("all", factor, new GradeCounts(50, 0, 0))),
            new MovedLimits("dropout", 0.5, new GradeCounts(50, 0, 0), new GradeCounts(0, 1, 7)),
        ]);
        string page = Encoding.UTF8.GetString(ReportPage.OfStudy(SampleResults.Run().Audit, SampleResults.Run().Digest, new SensitivitySection(tally, null)));

        Assert.Equal(["line-noise", "drift", "dropout"], tally.ReasonsThatMatter.AsEnumerable(), StringComparer.Ordinal);
        Assert.Equal(["line-noise", "drift"], tally.ReasonsOfTrials.AsEnumerable(), StringComparer.Ordinal);
        Assert.EndsWith("Verdicts of channels alone, and no trial, hang on missing samples.", string.Join(' ', SensitivityWords.Sentences(tally)), StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">baseline drift</th><td", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<th scope=\"row\">missing samples</th><td class=\"number\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void ARunInWhichNothingHangsOnTheLimitsSaysSo()
    {
        SensitivityTally tally = new(DefaultCriteria.All);
        tally.Add([Row("all", 1, new GradeCounts(5, 0, 1)), .. MovedLimits.Factors.Select(factor => Row("all", factor, new GradeCounts(5, 0, 1)))]);
        tally.Add(null);

        Assert.Equal(
            "By the limits in force 1 is rejected of 6 trials (each counted once a channel). Limits from half as large to twice as large would change no verdict. 1 recording of an earlier version could not be counted.",
            string.Join(' ', SensitivityWords.Sentences(tally)));
    }

    [Fact]
    public void TheTableHasEveryReasonAtEveryFactor()
    {
        string[] lines = Encoding.UTF8.GetString(SensitivityTsv.Render(Tally())).TrimEnd('\n').Split('\n');

        Assert.Equal(1 + (5 * (DefaultCriteria.All.All.Length + 1)), lines.Length);
        Assert.Contains("line-noise\t0.5\t150\t120\t11\t19\t4\t2\t0\t2", lines, StringComparer.Ordinal);
        Assert.Contains("all\t1\t150\t130\t10\t10\t4\t2\t0\t2", lines, StringComparer.Ordinal);
    }

    [Fact]
    public void ThePageHasTheNumbersAndThePicture()
    {
        string page = Encoding.UTF8.GetString(ReportPage.OfStudy(SampleResults.Run().Audit, SampleResults.Run().Digest, new SensitivitySection(Tally(), new byte[] { 1, 2, 3 })));

        Assert.Contains("<td class=\"number\">19 (11)</td>", page, StringComparison.Ordinal);
        Assert.Contains("<img src=\"data:image/png;base64,AQID\"", page, StringComparison.Ordinal);
        Assert.Contains("href=\"#limits-moved\"", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1500, 900)]
    [InlineData(800, 480)]
    public void ThePictureIsLegible(int width, int height)
    {
        Picture picture = SensitivityFigure.Compose(Tally(), new FigureSize(width, height));

        LabelChecks.AreLegibleAndInside(picture);
        LabelChecks.DoNotOverlap(picture);
        Assert.Contains(picture.Labels, label => label.Text is "22");
    }

    [Fact]
    public void TheSameCountsGiveTheSameBytes() =>
        Assert.Equal(SensitivityFigure.Render(Tally(), SensitivityFigure.Size), SensitivityFigure.Render(Tally(), SensitivityFigure.Size));

    [Fact]
    public void ResultsKeepTheCounts()
    {
        RecordingResult result = SampleResults.Clean("x") with { Sensitivity = First };

        byte[] json = ResultWriter.Render(result, new ResultOrigin("0.1.0", "0", null));

        Assert.Equal(First.ToArray(), ResultReader.Read(json, "result.json").Result.Sensitivity!.Value.ToArray());
    }

    [Fact]
    public void AResultOfAnEarlierVersionHasNone()
    {
        byte[] json = ResultWriter.Render(SampleResults.Clean("x") with { Sensitivity = null }, new ResultOrigin("0.1.0", "0", null));

        Assert.Null(ResultReader.Read(json, "result.json").Result.Sensitivity);
    }

    private static SensitivityTally Tally()
    {
        SensitivityTally tally = new(DefaultCriteria.All);
        tally.Add(First);
        tally.Add(Second);
        return tally;
    }

    private static MovedLimits Row(string reason, double factor, GradeCounts trials) => new(reason, factor, trials, new GradeCounts(1, 0, 1));
}
