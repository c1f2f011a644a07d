using ChannelAudit.Runs;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Runs;

public sealed class RecordingListTests : IDisposable
{
    private static readonly string Samples = string.Concat(Enumerable.Repeat("0.5\t-1.5\n", 25));

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
            "rename one of the two, or leave it out",
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
            "files looked for: .edf, .bdf, .csv, .tsv, .txt; in a BIDS data set *_emg.edf and *_emg.bdf",
            () => RecordingList.Find([_folder.Folder], []));
    }

    [Fact]
    public void TextThatDoesNotLookLikeSamplesIsPassedOverAndNamed()
    {
        Write("P07.edf", "P08.csv");
        _folder.Write("notes.txt", "Cable swapped at noon.\n");
        _folder.Write("lab/people.csv", "id,age\nP07,31\n");

        FoundRecordings found = RecordingList.Search([_folder.Folder], []);

        Assert.Equal("P07, P08", string.Join(", ", found.Entries.Select(entry => entry.Id)));
        Assert.Equal(["lab/people.csv", "notes.txt"], found.PassedOver.ToArray());
        Assert.Equal("notes", Ids(_folder.In("notes.txt")));
        Faults.AreExactly(
            $"{_folder.In("lab")}: no recording in there; without lines of numbers: people.csv",
            "name a file by itself to have it audited all the same",
            () => RecordingList.Find([_folder.In("lab")], []));
    }

    // The BIDS specification, "Common principles" (derivatives, sourcedata, code) and "Electromyography".
    [Fact]
    public void OfADataSetOnlyItsRecordingsOfEmgAreTaken()
    {
        Write(
            "dataset_description.json", "sub-01/emg/sub-01_task-x_emg.edf", "sub-02/emg/sub-02_task-x_emg.bdf", "sub-01/eeg/sub-01_task-x_eeg.edf", "sub-01/beh/sub-01_task-x_beh.tsv",
            "derivatives/ours/sub-01/emg/sub-01_task-x_desc-y_emg.edf", "sourcedata/raw.edf", "code/x.csv");

        Assert.Equal("sub-01+emg+sub-01_task-x_emg, sub-02+emg+sub-02_task-x_emg", Ids(_folder.Folder));
        Assert.Equal("emg+sub-01_task-x_emg", Ids(_folder.In("sub-01")));
    }

    [Fact]
    public void APatternIsSearchedBelowTheFolderBeforeIt()
    {
        Write("day1/P07.edf", "day1/P07_events.tsv", "day1/P08.edf", "day2/x/P07.edf", "day2/P07.txt.bak");

        Assert.Equal("day1+P07, day2+x+P07", Ids(_folder.In("**/P07.edf")));
        Assert.Equal("P07, P08", Ids(_folder.In("day1/*")));
        Faults.AreExactly(
            $"{_folder.In("day3*")}: no file fits",
            "* is any text within a name, ** any text, ? one character; quotes keep the shell from it",
            () => RecordingList.Find([_folder.In("day3*")], []));
    }

    [Fact]
    public void AListNamesPathsBesideItself()
    {
        Write("a/P07.edf", "b/P08.edf");
        string list = _folder.Write("which.txt", "# first visits\na/P07.edf\n\n b/P08.edf \r\n");

        Assert.Equal("P07, P08", Ids([.. RecordingList.Listed(list)]));
        Faults.AreExactly($"{_folder.In("b")}: cannot be read: Access to the path '{_folder.In("b")}' is denied.", "see that the file is there and that you may read it", () => RecordingList.Listed(_folder.In("b")));
        Faults.AreExactly($"{list}: names no recording", "write one path a line, relative to the list's own folder", () => RecordingList.Listed(_folder.Write("which.txt", "# none\n")));
    }

    [Fact]
    public void NamesWithBlanksUmlautsAndLineEndsAreSafeIds()
    {
        Write("Prüfung 1/äb c.edf", "a\nb.edf");

        Assert.Equal("Pr%C3%BCfung%201+%C3%A4b%20c".Replace("%C3%BC", "ü", StringComparison.Ordinal).Replace("%C3%A4", "ä", StringComparison.Ordinal) + ", a%0Ab", string.Join(", ", Ids(_folder.Folder).Split(", ").OrderBy(id => id[0] != 'P')));
    }

    private void Write(params string[] files)
    {
        foreach (string file in files)
        {
            // Text among recordings must look like samples.
            _folder.Write(file, Path.GetExtension(file) is ".csv" or ".tsv" or ".txt" ? Samples : string.Empty);
        }
    }

    private static string Ids(params string[] paths) => string.Join(", ", RecordingList.Find(paths, []).Select(entry => entry.Id));
}
