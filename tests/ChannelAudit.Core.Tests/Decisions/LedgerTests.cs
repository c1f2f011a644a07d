using System.Globalization;
using System.Text;
using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;
using static ChannelAudit.Core.Tests.Decisions.LedgerSamples;

namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>A ledger that was touched is told, with the line and what is wrong; one that was broken off loses nothing that was acknowledged.</summary>
public sealed class LedgerTests : IDisposable
{
    private readonly TemporaryFolder _place = new();

    private string Folder => _place.Folder;

    public void Dispose() => _place.Dispose();

    // FIPS 180-4 (NIST, 2015), SHA-256: the examples published with the standard, "abc" (one block) and the 448 bits of two blocks; and the empty message.
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    public void TheHashOfTheChainIsThatOfTheStandard(string message, string hash) => Assert.Equal(hash, LedgerChain.HashOf(Encoding.ASCII.GetBytes(message)));

    [Fact]
    public void WhatIsWrittenIsReadBackAndChained()
    {
        Decision[] written = [.. Add(Folder, Draft(), Draft(trial: 3, verdict: Grade.Reject)), Withdraw(Folder, 1)];

        Ledger ledger = Ledger.Read(Folder);

        Assert.Equal([1, 2, 3], ledger.Lines.Select(line => line.Number));
        Assert.Equal([LedgerChain.Start, written[0].Sha256, written[1].Sha256], ledger.Lines.Select(line => line.Previous), StringComparer.Ordinal);
        Assert.Equal(written.Select(line => line.Sha256), ledger.Lines.Select(line => line.Sha256), StringComparer.Ordinal);
        Assert.Equal(new LedgerMark(3, written[2].Sha256), ledger.Mark);
        Assert.Equal(3, ledger.WithdrawnBy(1));
        Assert.Null(ledger.WithdrawnBy(2));
        Assert.Equal(["line-noise"], ledger.Lines[0].Computed[0].Reasons, StringComparer.Ordinal);
        Assert.Equal([Grade.Pass, Grade.Reject, null], ledger.Lines.Select(line => line.Verdict));
        Assert.Equal(new DecidedTrial(3, 4.50m, 2m, "smile"), ledger.Lines[1].Trial);
        Assert.Equal(new DateTimeOffset(2026, 3, 12, 12, 0, 0, TimeSpan.Zero), ledger.Lines[0].At);
        Assert.Equal(["K07"], ledger.Recordings, StringComparer.Ordinal);
        Assert.Null(ledger.Torn);
        Assert.All(LinesIn(Folder), line => Assert.All(line, character => Assert.InRange(character, ' ', '~')));
    }

    [Theory]
    [InlineData(Grade.Pass)]
    [InlineData(Grade.Questionable)]
    [InlineData(Grade.Reject)]
    public void EveryVerdictIsReadBack(Grade verdict)
    {
        Add(Folder, Draft(verdict: verdict));

        Assert.Equal(verdict, Ledger.Read(Folder).Lines[0].Verdict);
    }

    [Fact]
    public void NoLedgerIsAnEmptyOne() => Assert.Equal(LedgerMark.None, Ledger.Read(Folder).Mark);

    [Fact]
    public void EveryChangedByteOfALineIsFoundAndItsLineNamed()
    {
        Add(Folder, Draft(), Draft(trial: 2), Draft(trial: 3));
        byte[] whole = File.ReadAllBytes(PathIn(Folder));
        int start = Array.IndexOf(whole, (byte)'\n') + 1;
        int end = Array.IndexOf(whole, (byte)'\n', start);

        for (int at = start; at < end; at++)
        {
            byte[] changed = [.. whole];
            changed[at] ^= 1;
            File.WriteAllBytes(PathIn(Folder), changed);

            Assert.StartsWith($"{Folder}/decisions.jsonl, line 2: ", FaultOf(Folder).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ReadAgainItIsWhatAFirstReadingGives()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        Ledger known = Ledger.Read(Folder);
        Add(Folder, Draft(trial: 3), Draft(trial: 2, verdict: Grade.Reject));
        Withdraw(Folder, 2);

        Ledger again = known.ReadAgain(Folder);

        Assert.Equal(LinesOf(Ledger.Read(Folder)), LinesOf(again), StringComparer.Ordinal);
        Assert.Same(known.Lines[1], again.Lines[1]);
        Assert.Equal(5, again.WithdrawnBy(2));
        Assert.Equal(again.Mark, again.ReadAgain(Folder).Mark);

        static string[] LinesOf(Ledger ledger) => [.. ledger.Lines.Select(line => Encoding.ASCII.GetString(DecisionJson.Render(line)))];
    }

    [Fact]
    public void ReadAgainNoChangedByteIsOverlookedBeforeOrBehindWhatWasKnown()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        Ledger known = Ledger.Read(Folder);
        Add(Folder, Draft(trial: 3));
        byte[] whole = File.ReadAllBytes(PathIn(Folder));

        for (int at = 0; at < whole.Length; at++)
        {
            byte[] changed = [.. whole];
            changed[at] ^= 1;
            File.WriteAllBytes(PathIn(Folder), changed);

            // The last line end may be missing; what stands there instead makes the line none.
            Ledger? again = at == whole.Length - 1 ? known.ReadAgain(Folder) : null;
            Assert.Equal(again is null ? null : 2, again?.Lines.Length);
            _ = again is null ? Assert.Throws<ChannelAuditException>(() => known.ReadAgain(Folder)) : null;
        }
    }

    [Fact]
    public void ReadAgainAShorterOneIsReadFromItsBeginning()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        Ledger known = Ledger.Read(Folder);
        Rewrite(Folder, LinesIn(Folder)[..1]);

        Assert.Equal(1, known.ReadAgain(Folder).Mark.Lines);
    }

    [Fact]
    public void AVerdictThatWasEditedIsSaidToBeChanged()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        string[] lines = LinesIn(Folder);
        Rewrite(Folder, lines[0], lines[1].Replace("\"verdict\":\"pass\"", "\"verdict\":\"reject\"", StringComparison.Ordinal));

        ChannelAuditException fault = FaultOf(Folder);

        Assert.Equal($"{Folder}/decisions.jsonl, line 2: changed since it was written: its SHA-256 does not fit", fault.Message);
        Assert.Equal("decisions are only ever added, by channelaudit: restore the file from a copy", fault.Hint);
    }

    [Theory]
    [InlineData("1 3", "line 2: numbered 3, but decision 2 belongs here: lines were cut out")]
    [InlineData("2 3", "line 1: numbered 2, but decision 1 belongs here: lines were cut out")]
    [InlineData("1 3 2", "line 2: numbered 3, but decision 2 belongs here: lines were moved")]
    [InlineData("3 2 1", "line 1: numbered 3, but decision 1 belongs here: lines were moved")]
    [InlineData("1 1 2 3", "line 2: line 1 stands here again")]
    [InlineData("1 2 3 2", "line 4: line 2 stands here again")]
    [InlineData("1 2 3 3", "line 4: line 3 stands here again")]
    public void LinesThatWereCutMovedOrDoubledAreNamed(string order, string expected)
    {
        Add(Folder, Draft(), Draft(trial: 2), Draft(trial: 3));
        string[] lines = LinesIn(Folder);
        Rewrite(Folder, [.. order.Split(' ').Select(number => lines[number[0] - '1'])]);

        Assert.EndsWith(expected, FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineOfAnotherLedgerDoesNotContinueThisOne()
    {
        using TemporaryFolder other = new();
        Add(Folder, Draft(), Draft(trial: 2));
        Add(other.Folder, Draft(verdict: Grade.Reject), Draft(trial: 2));
        Rewrite(Folder, LinesIn(Folder)[0], LinesIn(other.Folder)[1]);

        Assert.EndsWith("line 2: does not continue the line before it: one of the two is from another ledger", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "an empty line")]
    [InlineData("{}", "it does not end with its SHA-256")]
    [InlineData("\uFEFF{\"format\":1}", "it does not end with its SHA-256")]
    [InlineData("null", "it does not end with its SHA-256")]
    public void WhatIsNoLineIsNamed(string line, string expected)
    {
        Add(Folder, Draft());
        Rewrite(Folder, LinesIn(Folder)[0], line);

        Assert.Contains("line 2: ", FaultOf(Folder).Message, StringComparison.Ordinal);
        Assert.EndsWith(expected, FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    // A right hash does not make a line: who can compute one can write anything.
    [Theory]
    [InlineData("[", "not JSON")]
    [InlineData("{\"a\":1", "a value is missing or of the wrong kind")]
    [InlineData("{\"format\":\"channelaudit-decision/2\"", "its format is not 'channelaudit-decision/1'")]
    [InlineData("{\"format\":\"channelaudit-decision/1\",\"n\":\"1\"", "a value is missing or of the wrong kind")]
    [InlineData("{\"format\":\"channelaudit-decision/1\",\"n\":1e400", "a value is missing or of the wrong kind")]
    public void AForgedLineIsNamed(string body, string expected)
    {
        Rewrite(Folder, Encoding.ASCII.GetString(LedgerChain.Seal(Encoding.ASCII.GetBytes(body))));

        Assert.EndsWith("line 1: " + expected, FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    // Every line has a right hash and continues the one before; what it says cannot be.
    [Theory]
    [InlineData("withdraws 0", "line 3: withdraws what is no decision before it")]
    [InlineData("withdraws 3", "line 3: withdraws what is no decision before it")]
    [InlineData("withdraws 4", "line 3: withdraws what is no decision before it")]
    [InlineData("withdraws 2", "line 3: withdraws what is no decision before it")]
    [InlineData("withdraws nothing", "line 3: withdraws what is no decision before it")]
    [InlineData("no recording", "line 3: a decision without its recording, subject or verdict")]
    [InlineData("no verdict", "line 3: a decision without its recording, subject or verdict")]
    [InlineData("no hash", "line 3: a decision without its recording, subject or verdict")]
    [InlineData("no subject", "line 3: a decision without its recording, subject or verdict")]
    [InlineData("number 0", "line 3: numbered 0; numbers begin at 1")]
    [InlineData("number -1", "line 3: numbered -1; numbers begin at 1")]
    [InlineData("number 2", "line 3: numbered 2, like an earlier line")]
    public void AChainedLineThatSaysWhatCannotBeIsNamed(string what, string expected)
    {
        Add(Folder, Draft());
        Decision before = Withdraw(Folder, 1);
        Decision good = Draft(trial: 2) with { Number = 3, Previous = before.Sha256, At = before.At };
        Decision withdrawal = good with { Action = DecisionAction.Withdraw, Recording = null, Channel = null, Trial = null, Verdict = null, Computed = [], RecordingSha256 = null, CriteriaSha256 = null };
        string number = what.Split(' ')[1];
        Decision forged = what switch
        {
            "no recording" => good with { Recording = null },
            "no verdict" => good with { Verdict = null },
            "no hash" => good with { RecordingSha256 = null },
            "no subject" => good with { Channel = null, Trial = null },
            "withdraws nothing" => withdrawal,
            _ when what.StartsWith("withdraws", StringComparison.Ordinal) => withdrawal with { Withdraws = int.Parse(number, CultureInfo.InvariantCulture) },
            _ => good with { Number = int.Parse(number, CultureInfo.InvariantCulture) },
        };
        string[] lines = LinesIn(Folder);

        Rewrite(Folder, [.. lines, Encoding.ASCII.GetString(DecisionJson.Render(forged))]);
        string found = FaultOf(Folder).Message;
        Rewrite(Folder, [.. lines, Encoding.ASCII.GetString(DecisionJson.Render(good))]);

        Assert.EndsWith(expected, found, StringComparison.Ordinal);
        Assert.Equal(3, Ledger.Read(Folder).Lines.Length);
    }

    [Theory]
    [InlineData("\"sha256\":\"", "\"sha257\":\"")]
    [InlineData("\"}", "\"]")]
    [InlineData("\"}", "'}")]
    public void ALineThatDoesNotEndAsLinesDoIsNone(string from, string to)
    {
        Add(Folder, Draft());
        string line = LinesIn(Folder)[0];
        int at = line.LastIndexOf(from, StringComparison.Ordinal);
        Rewrite(Folder, line[..at] + to + line[(at + from.Length)..]);

        Assert.EndsWith("line 1: not a line of this ledger: it does not end with its SHA-256", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AHashInCapitalsIsNone()
    {
        Add(Folder, Draft());
        string line = LinesIn(Folder)[0];
        Rewrite(Folder, line[..^66] + line[^66..^2].ToUpperInvariant() + line[^2..]);

        Assert.EndsWith("line 1: not a line of this ledger: it does not end with its SHA-256", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineThatWasMovedToAnEndWithoutLineEndIsFound()
    {
        Add(Folder, Draft(), Draft(trial: 2), Draft(trial: 3));
        string[] lines = LinesIn(Folder);
        File.WriteAllText(PathIn(Folder), $"{lines[0]}\n{lines[2]}\n{lines[1]}");

        Assert.EndsWith("line 2: numbered 3, but decision 2 belongs here: lines were moved", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordingsAreInOrderAndFilesOfTheLedgerAreKnown()
    {
        Add(Folder, Draft() with { Recording = "K09" }, Draft() with { Recording = "K10" }, Draft() with { Recording = "K01" });

        Assert.Equal(["K01", "K09", "K10"], Ledger.Read(Folder).Recordings, StringComparer.Ordinal);
        Assert.All(["decisions.jsonl", "decisions.torn", ".decisions.lock"], name => Assert.True(Ledger.IsFileOfIts(name)));
        Assert.All(["decisions.tsv", "a/decisions.jsonl", string.Empty], name => Assert.False(Ledger.IsFileOfIts(name)));
    }

    [Fact]
    public void AFolderInTheLedgersPlaceIsSaid()
    {
        Directory.CreateDirectory(PathIn(Folder));

        ChannelAuditException fault = FaultOf(Folder);

        Assert.StartsWith($"{Folder}/decisions.jsonl: cannot be read: ", fault.Message, StringComparison.Ordinal);
        Assert.Equal("see that you may read it, and that it is a file", fault.Hint);
    }

    [Fact]
    public void WhoReadsLocksNobodyOut()
    {
        Add(Folder, Draft());
        using FileStream other = new(PathIn(Folder), FileMode.Open, FileAccess.Read, FileShare.Read);

        Assert.Single(Ledger.Read(Folder).Lines);
    }

    [Fact]
    public void AKeyThatStandsTwiceIsRefused()
    {
        Add(Folder, Draft());
        string body = LinesIn(Folder)[0].Split(",\"sha256\":\"")[0];
        Rewrite(Folder, Encoding.ASCII.GetString(LedgerChain.Seal(Encoding.ASCII.GetBytes(body + ",\"verdict\":\"reject\""))));

        Assert.EndsWith("line 1: not written by channelaudit", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void LineEndsOfAnotherSystemAreFound()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        File.WriteAllText(PathIn(Folder), string.Concat(LinesIn(Folder).Select(line => line + "\r\n")));

        Assert.Contains("line 1: ", FaultOf(Folder).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATornTailOfAnyLengthIsToldAndLeftOut()
    {
        Decision first = Add(Folder, Draft())[0];
        Add(Folder, Draft(trial: 2));
        byte[] whole = File.ReadAllBytes(PathIn(Folder));
        int start = Array.IndexOf(whole, (byte)'\n') + 1;

        for (int length = start + 1; length < whole.Length - 1; length++)
        {
            File.WriteAllBytes(PathIn(Folder), whole[..length]);

            Ledger torn = Ledger.Read(Folder);

            Assert.Equal(first.Sha256, Assert.Single(torn.Lines).Sha256);
            Assert.Equal(length - start, torn.TornBytes);
            Assert.Equal("line 2", torn.Torn!.Place);
            Assert.Contains("broken off while it was written", torn.Torn.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(100)]
    [InlineData(-3)]
    public void TheNextWriterKeepsATornTailAside(int length)
    {
        Decision first = Add(Folder, Draft())[0];
        byte[] line = [.. File.ReadAllBytes(PathIn(Folder))];
        byte[] torn = length > 0 ? line[..length] : line[..(line.Length - 1 + length)];
        File.WriteAllBytes(PathIn(Folder), [.. line, .. torn]);

        Decision next = Add(Folder, Draft(trial: 3))[0];

        Assert.Equal([first.Sha256, next.Sha256], Ledger.Read(Folder).Lines.Select(one => one.Sha256), StringComparer.Ordinal);
        Assert.Equal(torn.Append((byte)'\n'), File.ReadAllBytes(Path.Combine(Folder, Ledger.TornName)));
    }

    [Fact]
    public void ALineThatLacksOnlyItsEndIsThere()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        byte[] whole = File.ReadAllBytes(PathIn(Folder));
        File.WriteAllBytes(PathIn(Folder), whole[..^1]);

        Assert.Equal((2, 0), (Ledger.Read(Folder).Lines.Length, Ledger.Read(Folder).TornBytes));
        Assert.Equal(3, Add(Folder, Draft(trial: 3))[0].Number);
        Assert.Equal(3, Ledger.Read(Folder).Lines.Length);
        Assert.True(File.ReadAllBytes(PathIn(Folder)).AsSpan().StartsWith(whole));
    }

    [Fact]
    public void ALedgerThatLostItsEndIsFoundByWhatOutputsWereMadeFrom()
    {
        Add(Folder, Draft(), Draft(trial: 2), Draft(trial: 3));
        LedgerMark mark = Ledger.Read(Folder).Mark;
        string[] lines = LinesIn(Folder);
        Rewrite(Folder, lines[..2]);

        Ledger cut = Ledger.Read(Folder);
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => cut.RequireContinues(mark, Folder));
        Add(Folder, Draft(trial: 4));
        ChannelAuditException other = Assert.Throws<ChannelAuditException>(() => Ledger.Read(Folder).RequireContinues(mark, Folder));

        Assert.Equal($"{Folder}/decisions.jsonl: 2 lines, but audit.json was written from 3: its end was cut off, or it is gone", fault.Message);
        Assert.Equal("decisions are only ever added, by channelaudit: restore the file from a copy; to start without decisions, screen into another folder", fault.Hint);
        Assert.Equal($"{Folder}/decisions.jsonl, line 3: another decision than the one that audit.json was written from", other.Message);
        Ledger.Read(Folder).RequireContinues(cut.Mark, Folder);
        cut.RequireContinues(cut.Mark, Folder);
        cut.RequireContinues(LedgerMark.None, Folder);
        Ledger.Empty.RequireContinues(LedgerMark.None, Folder);
    }

    // The few lines of Python in docs/file-formats.md do the same with nothing of ours.
    [Fact]
    public void AnyoneCanFollowTheChainWithAHashAndAParser()
    {
        Add(Folder, Draft(reason: "<b>\u00E9</b> \"=1+1\" \U0001F600"), Draft(trial: 2));
        string previous = new('0', 64);
        foreach (string line in LinesIn(Folder))
        {
            int at = line.LastIndexOf(",\"sha256\":\"", StringComparison.Ordinal);
            using JsonDocument json = JsonDocument.Parse(line);

            Assert.Equal(previous, json.RootElement.GetProperty("previous").GetString());
            previous = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.ASCII.GetBytes(line[..at])));
            Assert.Equal(previous, json.RootElement.GetProperty("sha256").GetString());
        }

        Assert.Equal("<b>\u00E9</b> \"=1+1\" \U0001F600", Ledger.Read(Folder).Lines[0].Reason);
    }
}
