using System.IO.Pipes;
using ChannelAudit.Decisions;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using ChannelAudit.Text;
using Xunit;

namespace ChannelAudit.Core.Tests.Text;

/// <summary>A pipe that nobody writes to stands where a file is looked for: every reader refuses it at once.</summary>
public sealed class PlainFileTests : IDisposable
{
    // Far more than it takes; who opens a pipe waits for ever.
    private static readonly TimeSpan Enough = TimeSpan.FromSeconds(20);

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string, string> Readers { get; } = new()
    {
        { "rec.edf", "rec.edf: the file is empty" },
        { "rec.csv", "rec.csv: the file is empty" },
        { "setup.toml", "setup.toml: the file is empty" },
        { "rec_events.tsv", "rec_events.tsv: not an events table: the file is empty" },
        { "list.txt", "list.txt: names no recording" },
    };

    public void Dispose() => _folder.Dispose();

    [SkippableTheory]
    [MemberData(nameof(Readers))]
    public async Task APipeIsRefusedAndNotWaitedFor(string name, string message)
    {
        Skip.IfNot(NamedPipe.CanBeMade, "no named pipes");
        string pipe = NamedPipe.Make(_folder.In(name));

        ChannelAuditException fault = await Assert.ThrowsAsync<ChannelAuditException>(() => Task.Run(() => Read(pipe)).WaitAsync(Enough));

        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task APipeHasNoFieldsAboutAPerson()
    {
        Skip.IfNot(NamedPipe.CanBeMade, "no named pipes");
        string pipe = NamedPipe.Make(_folder.In("rec.edf"));

        Assert.False(await Task.Run(() => EdfPersonFields.AreFilledIn(pipe)).WaitAsync(Enough));
    }

    [SkippableFact]
    public async Task ALinkToAPipeIsRefusedToo()
    {
        Skip.IfNot(NamedPipe.CanBeMade, "no named pipes");
        string link = _folder.In("rec.edf");
        File.CreateSymbolicLink(link, NamedPipe.Make(_folder.In("pipe")));

        await Assert.ThrowsAsync<ChannelAuditException>(() => Task.Run(() => Read(link)).WaitAsync(Enough));
    }

    [SkippableFact]
    public async Task ALinkToAnOpenPipeIsRefusedToo()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "no links to what is open");
        await using AnonymousPipeServerStream pipe = new(PipeDirection.In);
        string open = FormattableString.Invariant($"/proc/self/fd/{pipe.SafePipeHandle.DangerousGetHandle()}");
        string link = _folder.In("rec.edf");
        File.CreateSymbolicLink(link, open);

        ChannelAuditException fault = await Assert.ThrowsAsync<ChannelAuditException>(() => Task.Run(() => Read(link)).WaitAsync(Enough));

        Assert.Equal((true, true), (PlainFile.IsEmpty(open), PlainFile.IsEmpty(link)));
        Assert.Contains("rec.edf: the file is empty", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../rec.edf")]
    [InlineData("below/../../rec.edf")]
    [InlineData("up/rec.edf")]
    public void ALinkThatGoesUpwardsThroughALinkedFolderLeadsWhereTheSystemGoes(string target)
    {
        // By the names alone the link would lead into lab; day1 really lies in store.
        _folder.Write("store/rec.edf", "from the store");
        _folder.Write("lab/rec.edf", string.Empty);
        Directory.CreateDirectory(_folder.In("store/first/below"));
        Directory.CreateSymbolicLink(_folder.In("lab/day1"), _folder.In("store/first"));
        Directory.CreateSymbolicLink(_folder.In("store/first/up"), "..");
        string link = _folder.In("lab/day1/link.edf");
        File.CreateSymbolicLink(link, target);

        FileInfo found = PlainFile.Target(link);

        Assert.Equal((File.ReadAllBytes(link).LongLength, false), (found.Length, PlainFile.IsEmpty(link)));
        Assert.Equal("from the store", File.ReadAllText(found.FullName));
    }

    [Fact]
    public void LinksInACircleAreAFault()
    {
        File.CreateSymbolicLink(_folder.In("one"), "two");
        File.CreateSymbolicLink(_folder.In("two"), "one");

        Assert.Throws<IOException>(() => PlainFile.IsEmpty(_folder.In("one")));
    }

    [SkippableFact]
    public async Task APipeAmongRecordingsInAFolderIsNotOpened()
    {
        Skip.IfNot(NamedPipe.CanBeMade, "no named pipes");
        NamedPipe.Make(_folder.In("notes.txt"));
        _folder.Write("P01.edf", "0");

        FoundRecordings found = await Task.Run(() => RecordingList.Search([_folder.Folder], [])).WaitAsync(Enough);

        Assert.Equal("P01", Assert.Single(found.Entries).Id);
    }

    [SkippableFact]
    public async Task APipeInPlaceOfTheLedgerTakesNoDecision()
    {
        Skip.IfNot(NamedPipe.CanBeMade, "no named pipes");
        NamedPipe.Make(_folder.In(Ledger.FileName));
        Decision draft = new() { By = "R.Viewer", Action = DecisionAction.Withdraw, Reason = "none", Withdraws = 1, Origin = "test" };

        ChannelAuditException fault = await Assert.ThrowsAsync<ChannelAuditException>(
            () => Task.Run(() => LedgerWriter.Append(_folder.Folder, _ => [draft], TimeProvider.System, CancellationToken.None)).WaitAsync(Enough));

        Assert.Contains("cannot be written, nothing was decided", fault.Message, StringComparison.Ordinal);
    }

    private static object Read(string path) => Path.GetExtension(path) switch
    {
        ".toml" => SetupFile.Read(path),
        ".tsv" => EventsTable.Read(path),
        ".txt" => RecordingList.Listed(path),
        _ => RecordingOpener.Open(path, new ReadOptions(SamplingHz: 1000)),
    };
}
