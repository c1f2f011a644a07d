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
