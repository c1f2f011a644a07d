using ChannelAudit.Criteria;
using ChannelAudit.Drafts;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Demo;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Drafts;

public sealed class SetupDraftTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void TheDraftOfASessionIsAsKept()
    {
        string path = Session();

        Golden.Match("ChannelAudit.Core.Tests/Drafts/setup-new.toml", SetupDraft.Of(path).ToText());
    }

    [Fact]
    public void AsItIsWrittenItChangesNoVerdict()
    {
        string path = Session();
        StudySetup setup = SetupFile.Parse(SetupDraft.Of(path).ToText(), "setup.toml");

        Assert.Equal(3, setup.Sites.Length);
        Assert.Equal(Verdicts(path, StudySetup.Empty), Verdicts(path, setup));
        Assert.Contains(Verdicts(path, setup), verdict => verdict.Contains("Reject", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryLineThatIsNotFilledInIsRefused()
    {
        string text = SetupDraft.Of(Rows("EMG 1", "EMG 2")).ToText();
        string[] choices = ["side", "mains_hz", "from", "adjacent"];
        (string Table, string Line)[] lines = [.. LinesToComplete(text)];

        Assert.Equal(24, lines.Select(line => line.Line.Split(' ')[0]).Distinct(StringComparer.Ordinal).Count());
        Assert.All(lines, line =>
        {
            string site = line.Table switch
            {
                "[[sites]]" => "name = \"a\"\nchannel = \"b\"\n",
                "[[recordings]]" when !line.Line.StartsWith("match", StringComparison.Ordinal) => "match = \"a\"\n",
                _ => string.Empty,
            };
            string toml = $"[[sites]]\nname = \"EMG 1\"\nchannel = \"x\"\n[[sites]]\nname = \"EMG 2\"\nchannel = \"y\"\n{line.Table}\n{site}{line.Line}\n";
            Exception? refused = Record.Exception(() => SetupFile.Parse(toml, "setup.toml"));

            Assert.True(choices.Contains(line.Line.Split(' ')[0], StringComparer.Ordinal) == refused is null, line.Line);
            Assert.True(refused is null or ChannelAuditException, line.Line);
        });
    }

    [Fact]
    public void AFilledDraftFitsItsRecording()
    {
        string path = Session();
        string text = SetupDraft.Of(path).ToText()
            .Replace("#   \"rest\",", "    \"rest\",", StringComparison.Ordinal)
            .Replace("# adjacent = ", "adjacent = ", StringComparison.Ordinal)
            .Replace("# side = \"left\"", "side = \"left\"", StringComparison.Ordinal)
            .Replace("# task = \"\"", "task = \"raise lip corner\"", StringComparison.Ordinal);

        SetupFit fit = SetupFit.Of(SetupFile.Parse(text, "setup.toml"), path);

        Assert.Equal(["rest rest 2", "EMG cheek raise lip corner 1", "EMG brow raise lip corner 1", "EMG eye raise lip corner 1"],
            fit.Labels.Select(label => FormattableString.Invariant($"{label.Place} {label.Label} {label.Trials}")), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("EMG|EMG|ECG", "EMG#1=EMG#1 EMG#2=EMG#2 ECG=ECG")]
    [InlineData("EMG|emg|Ground", "EMG=EMG emg=emg (2) Ground=Ground (2)")]
    [InlineData("EMG#1|EMG|EMG", "EMG#1=EMG#1 EMG#2=EMG#2")]
    [InlineData("say \"hi\"\\|µ\u202E", "say \"hi\"\\=say \"hi\"\\ µ\u202E=µ\u202E")]
    public void EveryChannelStandsUnderANameOfItsOwn(string labels, string sites)
    {
        string path = Rows(labels.Split('|'));
        SetupDraft draft = SetupDraft.Of(path);
        StudySetup setup = SetupFile.Parse(draft.ToText(), "setup.toml");

        Assert.Equal(sites, string.Join(' ', setup.Sites.Select(site => $"{site.Channel}={site.Name}")));
        Assert.Equal(setup.Sites.Length, SetupFit.Of(setup, path).Channels);
        Assert.DoesNotContain('\u202E', draft.ToText());
    }

    [Fact]
    public void AChannelThatNoSetupCanNameIsSaidToBeLeftOut()
    {
        SetupDraft draft = SetupDraft.Of(Rows("EMG#1", "EMG", "EMG"));

        Assert.Equal([new("EMG", "no setup can name it: its label is not plain, or is another channel's")], draft.Unlisted.ToArray());
        Assert.Contains("\n#   \"EMG\": no setup can name it", draft.ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void ChannelsWithoutALabelAreNamedByTheirPlace()
    {
        string path = _folder.In("blank.edf");
        EdfWriter.Write(path, new EdfContent([Signal(string.Empty), Signal("EMG"), Signal(string.Empty)], 3));

        StudySetup setup = SetupFile.Parse(SetupDraft.Of(path).ToText(), "setup.toml");

        Assert.Equal(["channel 1", "EMG", "channel 3"], setup.Sites.Select(site => site.Channel), StringComparer.Ordinal);
        Assert.Equal(3, SetupFit.Of(setup, path).Channels);
    }

    [Fact]
    public void ATextWithoutARateSaysThatItIsNeeded()
    {
        string path = _folder.Write("plain.csv", "EMG 1,EMG 2\n" + string.Concat(Enumerable.Repeat("1.5,2.5\n-0.5,3.25\n7,1\n", 40)));
        SetupDraft draft = SetupDraft.Of(path);
        string text = draft.ToText();

        Assert.True(draft is { LacksRate: true, LacksUnit: true, IsText: true });
        Assert.Contains("\n# sampling_hz = 0.0             # NEEDED, in samples per second: plain.csv has no time", text, StringComparison.Ordinal);
        Assert.Contains("the file names none: taken for uV\n", text, StringComparison.Ordinal);
        SetupFit fit = SetupFit.Of(SetupFile.Parse(text.Replace("# sampling_hz = 0.0", "sampling_hz = 100", StringComparison.Ordinal), "setup.toml"), path);
        Assert.Equal(2, fit.Channels);
    }

    [Fact]
    public void NoFieldOfAParticipantIsRepeated()
    {
        string path = Session();
        byte[] bytes = File.ReadAllBytes(path);
        "F 02-MAY-1951 Haverly_Quist"u8.CopyTo(bytes.AsSpan(8));
        "Startdate 05-MAR-2026 XQ7 OddTechnician"u8.CopyTo(bytes.AsSpan(88));
        File.WriteAllBytes(path, bytes);

        string text = SetupDraft.Of(path).ToText();

        Assert.All(["Haverly", "Quist", "1951", "XQ7", "Odd", "2026"], word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));
    }

    [Fact]
    public void LongAndHostileLabelsOfEventsAreCutAndEscaped()
    {
        string path = Rows("EMG");
        string many = string.Concat(Enumerable.Range(0, 45).Select(i => FormattableString.Invariant($"{i}\t1\tL{i}\n")));
        _folder.Write("rows_events.tsv", $"onset\tduration\ttrial_type\n0\t1\t{new string('x', 200)}\n0\t1\t]\u0007\n0\t0\t\"q\"\"\u202E\"\n{many}");

        string text = SetupDraft.Of(path).ToText();

        Assert.Contains($"#   too long or not plain: \"{new string('x', 60)}...\"  # once, 1 s\n", text, StringComparison.Ordinal);
        Assert.Contains("#   too long or not plain: \"]?\"  # once, 1 s\n", text, StringComparison.Ordinal);
        Assert.Contains("#   \"q\\\"\\u202E\",  # once, no duration\n", text, StringComparison.Ordinal);
        Assert.Contains("#   and 8 more labels\n]\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain(text, sign => sign != '\n' && char.IsControl(sign));
        SetupFile.Parse(text, "setup.toml");
    }

    [Fact]
    public void InstantsAreListedThoughNoTrialIsMadeOfThem()
    {
        string path = Rows("EMG");
        _folder.Write("rows_events.tsv", "onset\tduration\ttrial_type\n0\t0\tsmile\n1\tn/a\tsmile\n");

        string text = SetupDraft.Of(path).ToText();

        Assert.Contains("# 2 events from the table rows_events.tsv, none with a duration: state the window below", text, StringComparison.Ordinal);
        Assert.Contains("#   \"smile\",  # 2 times, no duration\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordingWithoutAChannelToAuditIsRefused()
    {
        string path = _folder.In("status.edf");
        EdfWriter.Write(path, new EdfContent([Signal("Status")], 3));

        var fault = Assert.Throws<ChannelAuditException>(() => SetupDraft.Of(path));

        Assert.StartsWith("status.edf: no channel left to audit: Status: ", fault.Message, StringComparison.Ordinal);
        Assert.Equal(FaultKind.Recording, fault.Kind);
    }

    private static IEnumerable<(string Table, string Line)> LinesToComplete(string text)
    {
        string table = string.Empty;
        foreach (string line in text.Split('\n'))
        {
            string heading = line.StartsWith("# [", StringComparison.Ordinal) ? line[2..] : line;
            table = heading.StartsWith('[') ? heading : table;
            if (line.StartsWith("# ", StringComparison.Ordinal) && line.Contains(" = ", StringComparison.Ordinal))
            {
                yield return (table, line[2..]);
            }
        }
    }

    private static string[] Verdicts(string path, StudySetup setup)
    {
        RecordingResult result = RecordingAudit.Of(new RecordingEntry("r", path, "r.edf"), setup, DefaultCriteria.All, null, CancellationToken.None);
        return
        [
            .. result.Channels.SelectMany(channel => channel.Cells
                .Select(cell => (cell.Trial, cell.Verdict, Reasons: string.Join(';', cell.Findings.Select(finding => finding.Reason))))
                .Select(cell => FormattableString.Invariant($"{channel.Name} {cell.Trial} {cell.Verdict} {cell.Reasons}"))
                .Append($"{channel.Name} {channel.Verdict} {string.Join(';', channel.NotAssessed.Select(one => one.Cause))}")),
        ];
    }

    private static EdfSignalContent Signal(string label) => new(label, -500, 500, 4, (first, samples) =>
    {
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = 10 * (first + i);
        }
    });

    private string Session()
    {
        string path = _folder.In("K07.edf");
        EdfFiles.Write(MadeRecording.Make(DemoStudy.Sessions[1].Plan), path);
        return path;
    }

    private string Rows(params string[] labels)
    {
        IEnumerable<string> rows = Enumerable.Range(0, 200)
            .Select(i => FormattableString.Invariant($"{i / 100.0:0.00}\t") + string.Join('\t', labels.Select((_, j) => FormattableString.Invariant($"{((i * (j + 3)) % 17) - 8.5}"))));
        return _folder.Write("rows.tsv", "time\t" + string.Join('\t', labels) + "\n" + string.Join('\n', rows) + "\n");
    }
}
