using System.Text;
using ChannelAudit.Lists;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Lists;

/// <summary>Lists of people, as spreadsheets save them.</summary>
public sealed class ListTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> OneListInManyDresses { get; } =
    [
        "recording\tchannel\ttrial\treason\nK07\tcheek\tn/a\tlead came loose\nK15\tn/a\t3\tn/a\n",
        "\uFEFFRecording;Channel;Trial;Reason;Who\r\nK07;cheek;;\"lead came loose\";T3\r\n;;;;\r\nK15;;3,0;;T1\r\n;;;;\r\n",
        "RECORDING,CHANNEL,TRIAL,REASON\r\n\r\nK07,cheek,ALL,lead came loose\r\nK15,*,3.0,\r\n",
        "reason\ttrial\tdate\tchannel\trecording\nlead came loose\tN/A\t2026-03-12\tcheek\tK07\n\t3.0\t\tall\tK15\n",
    ];

    [Theory]
    [MemberData(nameof(OneListInManyDresses))]
    public void WhatASpreadsheetDoesToAListDoesNotChangeIt(string text)
    {
        ExclusionList list = Exclusions(text);

        Assert.False(list.HasVerdicts);
        Assert.Equal(
            new[] { ("K07", "cheek", (int?)null, "lead came loose", Grade.Reject), ("K15", null, 3, null, Grade.Reject) },
            list.Lines.Select(line => (line.Place.Recording, line.Place.Channel, line.Place.TrialNumber, line.Reason, line.Verdict)));
    }

    [Theory]
    [InlineData("3", 3)]
    [InlineData("3.0", 3)]
    [InlineData("3,0", 3)]
    [InlineData("1,000", null)]
    [InlineData("1.000", null)]
    [InlineData("12,00", null)]
    [InlineData("3.5", null)]
    [InlineData("3.", null)]
    [InlineData("0", null)]
    [InlineData("-3", null)]
    [InlineData("3:baseline", null)]
    [InlineData("99999999999", null)]
    public void OnlyWholeNumbersAreTrials(string text, int? number) => Assert.Equal(number, new ListedPlace(2, "K07", null, text).TrialNumber);

    [Fact]
    public void LinesKeepTheirNumberInTheFile() => Assert.Equal(
        new[] { 2, 5 }, Exclusions("recording\tchannel\ttrial\na\tb\t1\n\n\t\t\nc\td\t2\n").Lines.Select(line => line.Place.Line));

    [Fact]
    public void GradesAreReadInManyWords()
    {
        ExclusionList list = Exclusions("recording\tchannel\ttrial\tVerdict\na\tb\t1\tBad\na\tb\t2\tok\na\tb\t3\tdoubtful\n");

        Assert.True(list.HasVerdicts);
        Assert.Equal(new[] { Grade.Reject, Grade.Pass, Grade.Questionable }, list.Lines.Select(line => line.Verdict));
    }

    [Theory]
    [InlineData("rec\tchannel\ttrial\na\tb\t1\n", "list.tsv, header: no column \"recording\"; did you mean \"recording\" by \"rec\"?")]
    [InlineData("recording\tsite\ttrial\na\tb\t1\n", "list.tsv, header: no column \"channel\"; the columns are recording, site, trial")]
    [InlineData("recording\tchannel\ttrail\na\tb\t1\n", "list.tsv, header: no column \"trial\"; did you mean \"trial\" by \"trail\"?")]
    [InlineData("recording\tchannel\ttrial\nn/a\tb\t1\n", "list.tsv, line 2: no recording")]
    [InlineData("recording\tchannel\ttrial\tverdict\na\tb\t1\trejct\n", "list.tsv, line 2: the verdict \"rejct\" is not known; did you mean \"reject\"?")]
    [InlineData("recording\tchannel\ttrial\tverdict\na\tb\t1\t\n", "list.tsv, line 2: no verdict")]
    [InlineData("recording\tchannel\ttrial\na\tb\n", "list.tsv, line 2: expected 3 columns, found 2")]
    [InlineData("", "list.tsv: not a list of exclusions: the file is empty")]
    public void WhatIsNoListIsOneErrorWithAHint(string text, string message)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Exclusions(text));

        Assert.Equal((message, FaultKind.Usage), (fault.Message, fault.Kind));
        Assert.NotEmpty(fault.Hint);
    }

    [Fact]
    public void LabelsHaveTheirRaterAndGrade()
    {
        GivenLabel[] labels = [.. Labels("Recording;Channel;Trial;Rater;Label\r\nK07;cheek;1;A;good\r\nK07;cheek;1;B;BAD\r\n;;;;\r\nK07;;;A;unsure\r\n")];

        Assert.Equal(new[] { ("A", Grade.Pass), ("B", Grade.Reject), ("A", Grade.Questionable) }, labels.Select(label => (label.Rater, label.Grade)));
        Assert.Equal((null, null), (labels[2].Place.Channel, labels[2].Place.Trial));
    }

    [Theory]
    [InlineData("recording\tchannel\ttrial\trater\na\tb\t1\tA\n", "list.tsv, header: no column \"label\"; the columns are recording, channel, trial, rater")]
    [InlineData("recording\tchannel\ttrial\trater\tlabel\na\tb\t1\t\tgood\n", "list.tsv, line 2: no rater")]
    [InlineData("recording\tchannel\ttrial\trater\tlabel\na\tb\t1\tA\tgreat\n", "list.tsv, line 2: the label \"great\" is not known")]
    public void WhatIsNoTableOfLabelsIsOneErrorWithAHint(string text, string message) =>
        Assert.Equal(message, Assert.Throws<ChannelAuditException>(() => Labels(text)).Message);

    private ExclusionList Exclusions(string text) => ExclusionList.Read(Written(text));

    private IEnumerable<GivenLabel> Labels(string text) => LabelList.Read(Written(text));

    private string Written(string text)
    {
        string path = _folder.In("list.tsv");
        File.WriteAllBytes(path, Encoding.UTF8.GetBytes(text));
        return path;
    }
}
