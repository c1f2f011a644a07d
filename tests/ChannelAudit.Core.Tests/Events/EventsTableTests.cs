using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Tests.Events;

/// <summary>Rules: BIDS specification 1.11, "Tabular files" (tabs, n/a, quotes) and "Events" (onset, duration, trial_type). Quoting: RFC 4180.</summary>
public sealed class EventsTableTests
{
    private const string Shape = "an events table has a header line with onset, duration and trial_type, tabs between columns, and times in seconds";

    [Fact]
    public void OnsetDurationAndLabelAreReadExactly()
    {
        ImmutableArray<RecordedEvent> events = Read("onset\tduration\ttrial_type\tresponse_time\n0.1\t2\trest\t1\n1.25e1\t3.000\tsmile\tn/a\n-0.5\t0\tcue\t0\n");

        Assert.Equal([new(0.1m, 2m, "rest"), new(12.5m, 3m, "smile"), new(-0.5m, 0m, "cue")], events.ToArray());
    }

    // A table of samples, or a line of separators: whoever has a thousand columns has no events.
    [Fact]
    public void MoreThanAThousandColumnsAreNoTableAndTakeNoMemory()
    {
        string header = "onset\t" + string.Join('\t', Enumerable.Range(2, 999));
        string rows = '\n' + string.Join('\t', Enumerable.Range(1, 1000));
        Assert.Equal(1m, Assert.Single(Read(header + rows)).OnsetS);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read("onset" + new string(';', 50_000)));

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4_000_000);
        Assert.Equal("e.tsv, line 1: not an events table: 50001 columns", fault.Message);
        Assert.Equal(Shape, fault.Hint);
        Assert.Contains("1001 columns", Assert.Throws<ChannelAuditException>(() => Read(header + "\tmore" + rows)).Message, StringComparison.Ordinal);
    }

    // The worst there is: rows of two letters. What a row takes beside them is its place, its cells and the event.
    [Fact]
    public void ShortRowsTakeAtMostSeventyTimesTheirLength()
    {
        string text = "onset\tduration\n" + string.Concat(Enumerable.Repeat("1\t2\n", 100_000));
        using TemporaryFolder folder = new();
        string path = folder.Write("e.tsv", text);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(100_000, EventsTable.Read(path).Length);

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 70L * text.Length);
    }

    [Fact]
    public void MissingCellsAreToleratedInEverySpelling()
    {
        ImmutableArray<RecordedEvent> events = Read("onset\tduration\ttrial_type\n1\tn/a\tn/a\n2\tNaN\t\n3\t\tx\n");

        Assert.Equal([new(1m, null, null), new(2m, null, null), new(3m, null, "x")], events.ToArray());
    }

    [Theory]
    [InlineData("onset\tduration\ttrial_type\r\n1\t2\ta b\r\n\r\n\r\n")]
    [InlineData("\uFEFFonset\tduration\ttrial_type\n1\t2\ta b")]
    [InlineData("onset,duration,trial_type\n1,2,a b\n")]
    [InlineData("\"onset\",\"duration\",\"trial_type\"\n\"1\",\"2\",\"a b\"\n")]
    [InlineData("trial_type;duration;onset\na b;2;1\n")]
    [InlineData("Onset\tDuration\tTrial_Type\n1.0\t2.0\ta b\n")]
    public void OtherWritingsOfTheSameTableAreTheSame(string text) => Assert.Equal([new(1m, 2m, "a b")], Read(text).ToArray());

    [Fact]
    public void AQuotedCellMayHoldTheSeparatorAndQuotes() =>
        Assert.Equal([new(1m, 2m, "smile, \"big\"")], Read("onset,duration,trial_type\n1,2,\"smile, \"\"big\"\"\"\n").ToArray());

    [Theory]
    [InlineData("onset\tduration\tvalue\tlabel\n1\t2\t7\ta\n", "a")]
    [InlineData("onset\tduration\tvalue\n1\t2\t7\n", "7")]
    [InlineData("onset\tduration\tlabel\ttrial_type\n1\t2\tx\ta\n", "a")]
    [InlineData("onset\tduration\tstim_file\n1\t2\tface.png\n", null)]
    public void TheLabelComesFromTheFirstKnownColumn(string text, string? label) => Assert.Equal([new(1m, 2m, label)], Read(text).ToArray());

    [Fact]
    public void AnEventWithoutOnsetIsLeftOutAndSaid()
    {
        using TemporaryFolder folder = new();
        ImmutableArray<RecordedEvent> events = EventsTable.Read(folder.Write("e.tsv", "onset\tduration\nn/a\t1\n2\t1\n"), out ImmutableArray<Warning> warnings);

        Assert.Equal([new(2m, 1m, null)], events.ToArray());
        Assert.Equal([new("e.tsv", "line 2", "an event without an onset is left out")], warnings.ToArray());
    }

    [Fact]
    public void ATableWithoutRowsIsEmpty() => Assert.Empty(Read("onset\tduration\ttrial_type\n"));

    public static TheoryData<string, string> Faults { get; } = new()
    {
        { string.Empty, $"e.tsv: not an events table: the file is empty | {Shape}; a pipe or a device cannot be read" },
        { "onsett\tduration\n1\t2\n", $"e.tsv, header: no column \"onset\"; did you mean \"onset\" by \"onsett\"? | {Shape}" },
        { "start\tend\n1\t2\n", $"e.tsv, header: no column \"onset\"; the columns are start, end | {Shape}" },
        { "onset\tduration\n1\t2\nsoon\t2\n", "e.tsv, line 3, column \"onset\": \"soon\" is not a time in seconds | write seconds with a decimal dot, such as 12.5, or n/a" },
        { "onset\tduration\n1,5\t2\n", "e.tsv, line 2, column \"onset\": \"1,5\" is not a time in seconds | write seconds with a decimal dot, such as 12.5, or n/a" },
        { "onset\tduration\n1\tlong\n", "e.tsv, line 2, column \"duration\": \"long\" is not a time in seconds | write seconds with a decimal dot, such as 12.5, or n/a" },
        { "onset\tduration\n1\t-2\n", "e.tsv, line 2: the duration -2 is negative | write 0 for an instant and n/a for a duration that is not known" },
        { "onset\tduration\n1e30\t2\n", "e.tsv, line 2, column \"onset\": 1e30 s is out of range | write seconds from the first sample; sample numbers and dates do not fit" },
        { "onset\tduration\ttrial_type\n1\t2\t\"a\n3\t2\tb\n", "e.tsv, line 2: a quote is opened and not closed in this line | remove the single quote sign, or double it inside a quoted cell" },
        { "onset\tduration\ttrial_type\n1\t2\t\"a\n3\t2\tb\"\n", "e.tsv, line 2: a quote is opened and not closed in this line | remove the single quote sign, or double it inside a quoted cell" },
        { "onset\tduration\t\"a\nb\"\n1\t2\tx\n", "e.tsv, line 1: a quote is opened and not closed in this line | remove the single quote sign, or double it inside a quoted cell" },
        { "onset\tduration\ttrial_type\n1\t2\ta\n3\t2\n", "e.tsv, line 3: expected 3 columns, found 2 | give every row one cell a column, n/a for what is missing, and put cells that hold the separator in double quotes" },
        { "onset\tonset\n1\t2\n", "e.tsv, header: the column \"onset\" is there twice | keep one of them, or rename the other" },
        { "a\0b\n", $"e.tsv: not an events table: the bytes are no text | {Shape}" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void EveryFaultHasItsText(string text, string expected)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read(text));

        Assert.Equal(expected, $"{fault.Message} | {fault.Hint}");
        Assert.Equal(FaultKind.Usage, fault.Kind);
    }

    [Fact]
    public void ATableThatIsNotThereIsSaid()
    {
        using TemporaryFolder folder = new();
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => EventsTable.Read(Path.Combine(folder.Folder, "none.tsv")));
        ChannelAuditException isFolder = Assert.Throws<ChannelAuditException>(() => EventsTable.Read(folder.Folder));

        Assert.Equal("none.tsv: cannot be read: it does not exist", fault.Message);
        Assert.Equal(FaultKind.Usage, isFolder.Kind);
    }

    private static ImmutableArray<RecordedEvent> Read(string text)
    {
        using TemporaryFolder folder = new();
        return EventsTable.Read(folder.Write("e.tsv", text));
    }
}
