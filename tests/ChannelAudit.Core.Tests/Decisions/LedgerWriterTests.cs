using ChannelAudit.Decisions;
using ChannelAudit.TestKit;
using Xunit;
using static ChannelAudit.Core.Tests.Decisions.LedgerSamples;

namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>Several writers, writers that died, and texts that are none.</summary>
public sealed class LedgerWriterTests : IDisposable
{
    private readonly TemporaryFolder _place = new();

    private string Folder => _place.Folder;

    public void Dispose() => _place.Dispose();

    [Fact]
    public async Task EveryAcknowledgedLineOfSeveralWritersIsThereOnce()
    {
        const int writers = 4;
        const int each = 12;

        Decision[][] acknowledged = await Task.WhenAll(Enumerable.Range(0, writers).Select(writer => Task.Run(() => Enumerable.Range(0, each)
            .Select(one => Add(Folder, Draft(trial: one + 1, reason: FormattableString.Invariant($"{writer}/{one}")))[0])
            .ToArray())));

        Ledger ledger = Ledger.Read(Folder);
        Assert.Equal(writers * each, ledger.Lines.Length);
        Assert.Equal(
            acknowledged.SelectMany(lines => lines).Select(line => line.Sha256).Order(StringComparer.Ordinal),
            ledger.Lines.Select(line => line.Sha256).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
    }

    [Fact]
    public void ALockFileThatWasLeftBehindLocksNobodyOut()
    {
        File.WriteAllText(Path.Combine(Folder, Ledger.LockName), "process 12345");

        Assert.Equal(1, Add(Folder, Draft())[0].Number);
    }

    [Fact]
    public async Task AWriterWaitsForOneThatHoldsTheLock()
    {
        Task<System.Collections.Immutable.ImmutableArray<Decision>> waiting;
        using (new FileStream(Path.Combine(Folder, Ledger.LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
        {
            waiting = Task.Run(() => Add(Folder, Draft()));
            Assert.False(File.Exists(PathIn(Folder)));
        }

        Assert.Equal(1, (await waiting)[0].Number);
    }

    [Fact]
    public void WhoGivesUpWaitingHasDecidedNothing()
    {
        using CancellationTokenSource gone = new();
        gone.Cancel();
        using FileStream held = new(Path.Combine(Folder, Ledger.LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);

        Assert.Throws<OperationCanceledException>(() => LedgerWriter.Append(Folder, _ => [Draft()], new FixedClock(), gone.Token));
        Assert.False(File.Exists(PathIn(Folder)));
    }

    [Fact]
    public void AWriterThatNeverEndsIsSaid()
    {
        using FileStream held = new(Path.Combine(Folder, Ledger.LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Add(Folder, Draft()));

        Assert.Equal(($"{Folder}/decisions.jsonl: another program is writing decisions, nothing was decided", "decide again when it has ended"), (fault.Message, fault.Hint));
    }

    [Fact]
    public void AFolderThatIsGoneIsSaid()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Add(_place.In("gone"), Draft()));

        Assert.StartsWith($"{_place.In("gone")}/decisions.jsonl: cannot be written, nothing was decided: ", fault.Message, StringComparison.Ordinal);
        Assert.Equal("check free space and permissions of the folder, and decide again", fault.Hint);
    }

    // The new line is shorter than what was broken off.
    [Fact]
    public void NothingOfALongTornTailStaysBehindTheNextLine()
    {
        byte[] line = File.ReadAllBytes(PathIn(WithOne(new string('x', 1900))));
        File.AppendAllText(PathIn(Folder), System.Text.Encoding.ASCII.GetString(line[..^5]));

        Add(Folder, Draft(trial: 3));

        Ledger ledger = Ledger.Read(Folder);
        Assert.Equal((2, 0), (ledger.Lines.Length, ledger.TornBytes));
    }

    [Fact]
    public void TheTimeIsAWholeSecond() => Assert.Equal(new DateTimeOffset(2026, 3, 12, 12, 0, 0, TimeSpan.Zero), Add(Folder, Draft())[0].At);

    [Fact]
    public void ABrokenLedgerIsNotAddedTo()
    {
        Add(Folder, Draft(), Draft(trial: 2));
        Rewrite(Folder, LinesIn(Folder)[1]);
        byte[] before = File.ReadAllBytes(PathIn(Folder));

        Assert.Throws<ChannelAuditException>(() => Add(Folder, Draft()));
        Assert.Equal(before, File.ReadAllBytes(PathIn(Folder)));
    }

    [Theory]
    [InlineData("", "the reason is empty")]
    [InlineData(" \t ", "the reason is empty")]
    [InlineData("two\nlines", "the reason holds U+000A as character 4, which is no text")]
    [InlineData("\u001b[31mred", "the reason holds U+001B as character 1, which is no text")]
    [InlineData("a\u0000", "the reason holds U+0000 as character 2, which is no text")]
    [InlineData("a\u2028b", "the reason holds U+2028 as character 2, which is no text")]
    [InlineData("a\ud800b", "the reason holds U+FFFD as character 2, which is no text")]
    public void WhatIsNoTextIsRefusedAndNothingIsWritten(string reason, string expected)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Add(Folder, Draft(), Draft(reason: reason)));

        Assert.Equal(expected, fault.Message);
        Assert.Equal(string.IsNullOrWhiteSpace(reason) ? "write it in words: who reads it later cannot ask" : "write it in one line, without control characters", fault.Hint);
        Assert.False(File.Exists(PathIn(Folder)));
    }

    [Fact]
    public void ATextHasALimit()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Add(Folder, Draft(reason: new string('x', 2001))));
        Assert.Equal(("the reason has 2001 characters, 2000 are allowed", "say it shorter, or name a document that says more"), (fault.Message, fault.Hint));
        Assert.Equal("the name has 201 characters, 200 are allowed", Assert.Throws<ChannelAuditException>(() => Add(Folder, Draft(by: new string('x', 201)))).Message);
        Assert.Equal(1, Add(Folder, Draft(reason: new string('x', 2000), by: new string('y', 200)))[0].Number);
    }

    [Theory]
    [InlineData(0, "there is no decision 0 | they are numbered from 1 to 3")]
    [InlineData(4, "there is no decision 4 | they are numbered from 1 to 3")]
    [InlineData(1, "decision 1 was withdrawn already, by 3 | nothing is left to take back")]
    [InlineData(3, "3 is a withdrawal itself | decide anew instead of taking it back")]
    public void OnlyADecisionThatStandsIsWithdrawn(int number, string expected)
    {
        Assert.Equal("nothing has been decided here yet", Assert.Throws<ChannelAuditException>(() => Withdraw(Folder, 1)).Hint);
        Add(Folder, Draft(), Draft(trial: 2));
        Withdraw(Folder, 1);

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Withdraw(Folder, number));

        Assert.EndsWith(expected, $"{fault.Message} | {fault.Hint}", StringComparison.Ordinal);
        Assert.Equal(3, Ledger.Read(Folder).Lines.Length);
    }

    [Fact]
    public void ALinkIsNotWrittenThrough()
    {
        string elsewhere = _place.Write("secret.txt", "one line without an end");
        Directory.CreateDirectory(_place.In("audit"));
        File.CreateSymbolicLink(_place.In("audit/decisions.jsonl"), elsewhere);

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Add(_place.In("audit"), Draft()));
        Assert.EndsWith("a link to another place", fault.Message, StringComparison.Ordinal);
        Assert.Equal("put the file itself into the folder of the audit", fault.Hint);
        Assert.Equal("one line without an end", File.ReadAllText(elsewhere));
    }

    private string WithOne(string reason)
    {
        Add(Folder, Draft(reason: reason));
        return Folder;
    }
}
