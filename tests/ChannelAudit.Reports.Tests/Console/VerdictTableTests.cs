using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Console;

public sealed class VerdictTableTests
{
    private static readonly TerminalStyle Style = new();

    [Fact]
    public void OneRecordingIsItsChannelsWorstFirst() => Golden.Match(
        "console-one.txt", SampleResults.Run(SampleResults.Faulty()).Screen("audit", Style));

    [Fact]
    public void SeveralRecordingsAreAListAndTheWorstInDetail() => Golden.Match(
        "console-many.txt", SampleResults.Run().Screen("audit", Style));

    [Fact]
    public void AnAsciiTerminalGetsAscii()
    {
        string text = SampleResults.Run().Screen("audit", Style with { Ascii = true });

        Golden.Match("console-ascii.txt", text);
        Assert.All(text, character => Assert.True(character == '\n' || char.IsBetween(character, ' ', '~')));
    }

    [Fact]
    public void ColourComesOnlyWhenAskedForAndAddsNothingElse()
    {
        string plain = SampleResults.Run().Screen("audit", Style);
        string coloured = SampleResults.Run().Screen("audit", Style with { Colour = true });

        Assert.DoesNotContain('\u001b', plain);
        Assert.Contains("\u001b[1;35m\u22A0 reject", coloured, StringComparison.Ordinal);
        Assert.Equal(plain, System.Text.RegularExpressions.Regex.Replace(coloured, "\u001b\\[[0-9;]*m", string.Empty, System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(80)]
    [InlineData(72)]
    [InlineData(60)]
    [InlineData(40)]
    public void NoLineIsWiderThanTheTerminal(int width)
    {
        SampleRun run = SampleResults.Run(SampleResults.Faulty(), SampleResults.Hostile(), SampleResults.Clean(new string('n', 90)));

        string text = run.Screen("audit", Style with { Width = width });

        Assert.All(text.Split('\n'), line => Assert.True(TerminalText.Width(line) <= width, line));
    }

    [Theory]
    [InlineData(80)]
    [InlineData(60)]
    [InlineData(40)]
    public void ANarrowTerminalGetsTheSameWordsInOtherLines(int width)
    {
        string text = SampleResults.Run().Screen("audit", Style with { Width = width });

        Golden.Match($"console-{width.Plain()}.txt", text);
    }

    [Theory]
    [InlineData(100)]
    [InlineData(80)]
    [InlineData(60)]
    [InlineData(40)]
    [InlineData(10)]
    public void NeitherAVerdictNorAReasonIsLostAndNoWordIsBroken(int width)
    {
        string[] words = Words(SampleResults.Run(SampleResults.Faulty()).Screen("audit", Style with { Width = 100 }));
        string[] narrow = Words(SampleResults.Run(SampleResults.Faulty()).Screen("audit", Style with { Width = width }));

        // Only the headings of columns and the words that take their place may differ.
        string[] headings = ["verdict", "channel", "quest.", "why", "trials:", "0"];
        Assert.Empty(words.Except(narrow, StringComparer.Ordinal).Except(headings, StringComparer.Ordinal));
        Assert.All(
            ["cheek", "reject", "brow", "questionable", "eye", "pass", "14.2", "mains", "drift"],
            word => Assert.Contains(word, narrow, StringComparer.Ordinal));
    }

    // Columns as Unicode's East Asian Width and grapheme clusters have them, counted by hand.
    [Theory]
    [InlineData("\u9830\u306E\u7B4B\u96FB\u56F3", 10)]
    [InlineData("bru\u0308cke", 6)]
    [InlineData("\u1112\u1161\u11AB\u1100\u116E\u11A8", 4)]
    [InlineData("\U0001F642 face", 7)]
    [InlineData("\u2764\uFE0F", 2)]
    [InlineData("\uFF21\uFF22\uFF23\uFF24\uFF25", 10)]
    [InlineData("\uFF76\uFF80\uFF76\uFF85", 4)]
    public void WideAndJoinedSignsKeepTheColumnsInLine(string label, int columns)
    {
        RecordingResult recording = SampleResults.Faulty();
        recording = recording with { Channels = [recording.Channels[0] with { Name = label }, .. recording.Channels.Skip(1)] };

        string text = SampleResults.Run(recording).Screen("audit", Style);

        int name = Math.Max("channel".Length, columns);
        Assert.Contains($"\n\u22A0 reject        {label}{new string(' ', name - columns)}      3      3      0  ", text, StringComparison.Ordinal);
        Assert.Contains($"\n\u25B2 questionable  {"brow".PadRight(name)}      0      0      6  ", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100)]
    [InlineData(40)]
    public void LongLabelsKeepTheirBeginningAndTheirEnd(int width)
    {
        string label = "zygomaticus" + new string('x', 62) + "-left-2";
        RecordingResult recording = SampleResults.Faulty();
        recording = recording with { Channels = [recording.Channels[0] with { Name = label }, .. recording.Channels.Skip(1)] };

        string text = SampleResults.Run(recording).Screen("audit", Style with { Width = width });

        Assert.Equal(80, label.Length);
        Assert.Contains("reject        zygomatic", text, StringComparison.Ordinal);
        Assert.Contains("...", text, StringComparison.Ordinal);
        Assert.Contains("-left-2", text, StringComparison.Ordinal);
    }

    [Fact]
    public void APathStaysWholeSoThatItCanBeCopied()
    {
        string folder = "/data/" + new string('d', 90) + "/audit";

        string text = SampleResults.Run().Screen(folder, Style with { Width = 40 });

        Assert.Contains($"\n{folder}:\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void LabelsCannotSteerTheTerminal()
    {
        string text = SampleResults.Run(SampleResults.Hostile()).Screen("audit\u001b]0;x\u0007", Style);

        Assert.All(text, character => Assert.True(character == '\n' || !char.IsControl(character)));
        Assert.DoesNotContain('\u202E', text);
    }

    [Fact]
    public void ManyFaultyRecordingsStayOnAFewScreens()
    {
        SampleRun run = SampleResults.Run([.. Enumerable.Range(10, 60).Select(number => SampleResults.Faulty() with { Id = $"p{number.Plain()}" })]);

        string text = run.Screen("audit", Style);

        Assert.Equal(RunCollector.MostDetailed, text.Split('\n').Count(line => line.Contains(": EDF+C", StringComparison.Ordinal)));
    }

    [Fact]
    public void OfManyChannelsAmongOthersTheWorstAreShownAndWhatTheyShareIsSaidOnce()
    {
        NotAssessed open = new(ReasonCode.Drift, "the file is high-passed at 20 Hz");
        RecordingResult clean = SampleResults.Clean("many");
        RecordingResult many = clean with
        {
            Channels =
            [
                .. SampleResults.Faulty().Channels.Take(1),
                .. Enumerable.Range(1, 127).Select(number => clean.Channels[0] with { Name = $"c{number.Plain()}", NotAssessed = [open] }),
            ],
        };

        string among = SampleResults.Run(many, SampleResults.Clean("other")).Screen("audit", Style);
        string alone = SampleResults.Run(many).Screen("audit", Style);

        Assert.Contains("\nand 116 more channels: see report.html\n", among, StringComparison.Ordinal);
        Assert.Contains("\n128 channels not assessed: baseline drift (the file is high-passed at 20 Hz)\n", among, StringComparison.Ordinal);
        Assert.Contains("nothing found; not everything assessed, see below", among, StringComparison.Ordinal);
        Assert.DoesNotContain("more channel", alone, StringComparison.Ordinal);
        Assert.Contains("\u25CB pass          c127 ", alone, StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordingThatPassesSaysWhatIsWrongWithItsTrialsAndItsFile()
    {
        RecordingResult clean = SampleResults.Clean("cut");
        CellResult moved = clean.Channels[0].Cells[2] with { Verdict = Grade.Reject, Reasons = [ReasonCode.LowFrequency] };
        RecordingResult cut = clean with
        {
            Channels = [clean.Channels[0] with { Cells = clean.Channels[0].Cells.SetItem(2, moved) }, clean.Channels[1]],
            Warnings = [new Warning("cut.edf", "header", "number of records is stated as '522'; the file holds 245")],
        };

        string text = SampleResults.Run(cut, SampleResults.Clean("whole")).Screen("audit", Style);

        Assert.Contains("motion in 1 trial\n", text, StringComparison.Ordinal);
        Assert.Contains("also: 1 warning, see report.html\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(
        SampleResults.Run().Screen("audit", Style), CommaCulture.Run(() => SampleResults.Run().Screen("audit", Style)));

    private static string[] Words(string text) => text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);
}
