using ChannelAudit.Runs;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Runs;

public sealed class RecordingListTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AFolderIsSearchedWithEverythingBelowIt()
    {
        Write("b.EDF", "a.bdf", "deep/er/c.csv", "d.tsv", "e.txt", "image.png", "setup.toml");

        Assert.Equal("a, b, d, deep+er+c, e", Ids(_folder.Folder));
        Assert.Equal("deep/er/c.csv", RecordingList.Find([_folder.Folder], [])[3].RelativePath);
    }

    // Names of companions: the BIDS specification, "Electromyography" and "Modality agnostic files".
    [Fact]
    public void CompanionsAreNoRecordings()
    {
        Write(
            "participants.tsv", "README.txt", "CHANGES.txt", "sub-01/sub-01_scans.tsv", "sub-01/emg/sub-01_task-x_emg.edf",
            "sub-01/emg/sub-01_task-x_events.tsv", "sub-01/emg/sub-01_task-x_channels.tsv", "sub-01/emg/sub-01_electrodes.tsv",
            "sub-01/emg/sub-01_task-x_emg.json");

        Assert.Equal("sub-01+emg+sub-01_task-x_emg", Ids(_folder.Folder));
    }

    [Fact]
    public void OurOwnOutputsAreNoRecordings()
    {
        Write("P07.edf", "audit/verdicts.tsv", "audit/recordings/P07/other.tsv", "loose/measures.tsv");
        _folder.Write("audit/audit.json", "{ \"format\": \"channelaudit-audit/1\" }");

        Assert.Equal("P07", Ids(_folder.Folder));
    }

    [Fact]
    public void HiddenFilesAndFoldersArePassedOver()
    {
        Write("P07.edf", "._P07.edf", ".git/x.edf");

        Assert.Equal("P07", Ids(_folder.Folder));
    }

    [Fact]
    public void ALinkedFolderIsNotFollowedButALinkedFileIs()
    {
        Write("a/P07.edf");
        Directory.CreateSymbolicLink(_folder.In("a/round"), _folder.In("a"));
        File.CreateSymbolicLink(_folder.In("a/P08.edf"), _folder.In("a/P07.edf"));

        Assert.Equal("P07, P08", Ids(_folder.In("a")));
    }

    [Fact]
    public void AFileThatIsNamedIsTakenWhateverItIsCalled()
    {
        Write("deep/P07.dat");

        RecordingEntry entry = Assert.Single(RecordingList.Find([_folder.In("deep/P07.dat")], []));

        Assert.Equal("P07", entry.Id);
        Assert.Equal("P07.dat", entry.RelativePath);
        Assert.Equal(_folder.In("deep/P07.dat"), entry.FilePath);
    }

    [Fact]
    public void AFileReachedTwiceIsListedOnce()
    {
        Write("P07.edf", "P08.edf");

        Assert.Equal("P07, P08", Ids(_folder.Folder, _folder.In("P07.edf"), _folder.In("./P08.edf")));
    }

    [Fact]
    public void TheEventsTableOfTheRunIsNoRecording()
    {
        Write("P07.edf", "when.csv");

        Assert.Equal("P07", string.Join(", ", RecordingList.Find([_folder.Folder], [_folder.In("when.csv")]).Select(entry => entry.Id)));
    }

    [Fact]
    public void TwoRecordingsOfOneIdAreRefused()
    {
        Write("P07.edf", "P07.csv");

        Faults.AreExactly(
            $"{_folder.In("P07.edf")}: would be called 'P07' like {_folder.In("P07.csv")}",
            "give the folder above both, or leave one of the two out",
            () => RecordingList.Find([_folder.Folder], []));
    }

    [Fact]
    public void IdsThatDifferByCaseAloneAreOne()
    {
        Write("x/P07.edf", "y/p07.edf");

        Faults.AreExactly(
            $"{_folder.In("y/p07.edf")}: would be called 'P07' like {_folder.In("x/P07.edf")}",
            "give the folder above both, or leave one of the two out",
            () => RecordingList.Find([_folder.In("x"), _folder.In("y")], []));
    }

    [Fact]
    public void WhatDoesNotExistIsRefused() => Faults.AreExactly(
        "no/such.edf: there is no such file or folder",
        "give recordings, or folders that hold recordings",
        () => RecordingList.Find(["no/such.edf"], []));

    [Fact]
    public void AFolderWithoutRecordingsIsRefused()
    {
        Write("a.png");

        Faults.AreExactly(
            $"{_folder.Folder}: no recording in there",
            "files looked for: .edf, .bdf, .csv, .tsv, .txt",
            () => RecordingList.Find([_folder.Folder], []));
    }

    private void Write(params string[] files)
    {
        foreach (string file in files)
        {
            _folder.Write(file);
        }
    }

    private static string Ids(params string[] paths) => string.Join(", ", RecordingList.Find(paths, []).Select(entry => entry.Id));
}
