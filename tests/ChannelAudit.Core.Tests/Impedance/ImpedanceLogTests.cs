using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Impedance;
using Xunit;
using static ChannelAudit.Core.Tests.Impedance.Readings;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>The table of readings: what it may say, and what each line that it may not say is answered with.</summary>
public sealed class ImpedanceLogTests
{
    private const string PairHint =
        "write a-b, a-ground or b-ground (a is the first electrode of the site, b the second), or across two sites such as cheek.b-eye.a";

    private const string Shape = "such a table has a header line with site, pair and kohm, and time and phase if you like, and tabs between columns";

    [Fact]
    public void ALineIsReadAsItStands()
    {
        ImpedanceLog log = Read(Header + "cheek\ta-b\t4.8\t2026-03-12T10:05\tbefore\n");

        LoggedReading reading = Assert.Single(log.Readings);
        Assert.Equal((2, "cheek", ImpedancePair.AToB, "a-b", 4.8), (reading.Line, reading.Site, reading.Pair, reading.PairCode, reading.Kohm));
        Assert.Equal(("2026-03-12T10:05", "10:05", "before", null), (reading.Time!.Value.ToString(), reading.Time.Value.Clock, reading.Phase, reading.Recording));
        Assert.Equal("r.tsv", log.FileName);
        Assert.Empty(log.Warnings);
        Assert.True(log.HasTimes);
        Assert.False(log.NamesRecordings);
    }

    [Fact]
    public void TheHashIsThatOfTheBytes()
    {
        const string text = "\uFEFFsite\tpair\tkohm\r\ncheek\ta-b\t4.8\r\n";

        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), Read(text).Sha256);
    }

    [Theory]
    [InlineData("a-b", ImpedancePair.AToB, "a-b")]
    [InlineData("b-a", ImpedancePair.AToB, "a-b")]
    [InlineData(" A - B ", ImpedancePair.AToB, "a-b")]
    [InlineData("cheek.a-cheek.b", ImpedancePair.AToB, "a-b")]
    [InlineData("C-1-C-2", ImpedancePair.AToB, "a-b")]
    [InlineData("a-ground", ImpedancePair.AToGround, "a-ground")]
    [InlineData("Ground-a", ImpedancePair.AToGround, "a-ground")]
    [InlineData("b-ground", ImpedancePair.BToGround, "b-ground")]
    [InlineData("C-2-ground", ImpedancePair.BToGround, "b-ground")]
    [InlineData("cheek.b-eye.a", ImpedancePair.Across, "cheek.b-eye.a")]
    [InlineData("eye.a-cheek.b", ImpedancePair.Across, "cheek.b-eye.a")]
    [InlineData("b-eye.a", ImpedancePair.Across, "cheek.b-eye.a")]
    [InlineData("C-2-eye.a", ImpedancePair.Across, "cheek.b-eye.a")]
    [InlineData("cheek.C-2-eye.a", ImpedancePair.Across, "cheek.b-eye.a")]
    public void APairMayBeWrittenInSeveralWays(string text, ImpedancePair pair, string code)
    {
        LoggedReading reading = Assert.Single(Read($"site\tpair\tkohm\ncheek\t{text}\t1\n", Face).Readings);

        Assert.Equal((pair, code), (reading.Pair, reading.PairCode));
    }

    [Fact]
    public void NamesWithDashesAndDotsAreNoTrouble()
    {
        ImpedanceLog log = Read("site\tpair\tkohm\nleft-cheek.1\tleft-cheek.1.a-left-eye.b\t3\nleft-eye\ta-b\t2\n");

        Assert.Equal(["left-cheek.1.a-left-eye.b", "a-b"], log.Readings.Select(reading => reading.PairCode), StringComparer.Ordinal);
    }

    // Every dash may be the one between two names, so that a long cell of nothing else must not be tried to its end.
    [Theory]
    [InlineData("k", 200)]
    [InlineData("k", 20_000)]
    [InlineData("cheek.a", 20_000)]
    public void ALineOfDashesIsNoPairAndTakesNoMemory(string start, int dashes)
    {
        string text = $"site\tpair\tkohm\ncheek\t{start}{new string('-', dashes)}\t3\n";
        long before = GC.GetAllocatedBytesForCurrentThread();
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read(text));

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 2_000_000);
        Assert.Contains("is no pair of contacts", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("site\tpair\tkohm\r\ncheek\ta-b\t4.8\r\n\r\n")]
    [InlineData("\uFEFFsite\tpair\tkohm\ncheek\ta-b\t4.8")]
    [InlineData("kohm,site,pair,meter\n4.80,cheek,a-b,M2\n")]
    [InlineData("site;pair;kohm;time\n\"cheek\";a-b;4.8;n/a\n")]
    public void OtherWritingsOfTheSameTableAreTheSame(string text)
    {
        LoggedReading reading = Assert.Single(Read(text).Readings);

        Assert.Equal(new LoggedReading(2, new("cheek", false), new("cheek", true), 4.8), reading);
    }

    [Theory]
    [InlineData("10:05", "10:05", false)]
    [InlineData("9:05", "09:05", false)]
    [InlineData("10:05:30", "10:05:30", false)]
    [InlineData("2026-03-12T10:05", "2026-03-12T10:05", true)]
    [InlineData("2026-03-12 10:05:00", "2026-03-12T10:05", true)]
    [InlineData("2026-03-12T10:05:30.25+01:00", "2026-03-12T10:05:30", true)]
    [InlineData("2026-03-12T10:05:00Z", "2026-03-12T10:05", true)]
    public void TimesAreReadWithAndWithoutADate(string text, string expected, bool hasDate)
    {
        ReadingTime time = Assert.Single(Read($"{Header}cheek\ta-b\t4\t{text}\tbefore\n").Readings).Time!.Value;

        Assert.Equal((expected, hasDate), (time.ToString(), time.HasDate));
    }

    [Fact]
    public void TheOrderIsThatOfTimeNotOfLines()
    {
        ImpedanceLog log = Read(Header + "cheek\ta-b\t3\t10:10\tn/a\ncheek\ta-b\t2\t9:55\tn/a\ncheek\ta-b\t4\t10:10\tn/a\n");

        Assert.Equal([2.0, 3.0, 4.0], log.Readings.Select(reading => reading.Kohm));
    }

    [Fact]
    public void WithoutEveryTimeTheLinesCount()
    {
        ImpedanceLog log = Read(Header + "cheek\ta-b\t3\t10:10\tn/a\ncheek\ta-b\t2\tn/a\tn/a\n");

        Assert.Equal([3.0, 2.0], log.Readings.Select(reading => reading.Kohm));
        Assert.Equal([new("r.tsv", "line 3", "no time, though other lines have one: the order of the lines counts instead")], log.Warnings.ToArray());
        Assert.False(log.HasTimes);
    }

    [Fact]
    public void TheSameLineAgainIsCountedOnceWhenItHasATime()
    {
        const string line = "cheek\ta-b\t3\t10:10\tbefore\n";
        ImpedanceLog timed = Read(Header + line + line);
        ImpedanceLog untimed = Read("site\tpair\tkohm\ncheek\ta-b\t3\ncheek\tb-a\t3\n");

        Assert.Single(timed.Readings);
        Assert.Equal([new("r.tsv", "line 3", "the same reading as in a line above: counted once")], timed.Warnings.ToArray());
        Assert.Equal((2, 0), (untimed.Readings.Length, untimed.Warnings.Length));
    }

    [Fact]
    public void ALineWithoutAValueCountsAsNotTaken()
    {
        ImpedanceLog log = Read("site\tpair\tkohm\ncheek\ta-b\tn/a\ncheek\ta-ground\t3\n");

        Assert.Equal("a-ground", Assert.Single(log.Readings).PairCode);
        Assert.Equal([new("r.tsv", "line 2", "no value: this reading counts as not taken")], log.Warnings.ToArray());
    }

    [Fact]
    public void EachRecordingHasItsOwnReadings()
    {
        ImpedanceLog log = Read("recording\tsite\tpair\tkohm\nK07\tcheek\ta-b\t3\nK03\tcheek\ta-b\t4\nK07\tcheek\ta-b\t5\n");
        ImpedanceLog shared = Read("site\tpair\tkohm\ncheek\ta-b\t3\n");

        Assert.Equal(["K07", "K03"], log.Recordings, StringComparer.Ordinal);
        Assert.Equal([3.0, 5.0], log.For("K07").Readings.Select(reading => reading.Kohm));
        Assert.Empty(log.For("K08").Readings);
        Assert.Equal(shared, shared.For("K08"));
    }

    public static TheoryData<string, string, string> Faults { get; } = new()
    {
        { string.Empty, "r.tsv: not a table of impedance readings: the file is empty", $"{Shape}; a pipe or a device cannot be read" },
        { "a\0b\n", "r.tsv: not a table of impedance readings: the bytes are no text", Shape },
        { "site\tpair\tvalue\n", "r.tsv, header: no column \"kohm\"; the columns are site, pair, value", Shape },
        { "pair\tkohm\n", "r.tsv, header: no column \"site\"; the columns are pair, kohm", Shape },
        { "site\tpair\tohm\ncheek\ta-b\t4800\n", "r.tsv, header: a column \"ohm\" but none \"kohm\"", "readings are in kΩ: divide values in Ω by 1000 and call the column kohm" },
        { "site\tsite\tpair\tkohm\n", "r.tsv, header: the column \"site\" is there twice", "keep one of them, or rename the other" },
        { "site\tpair\tkohm\n", "r.tsv: no readings below the header", "write a line for each reading, or leave the table out: without one impedance is not available" },
        { "site\tpair\tkohm\ncheek\ta-b\n", "r.tsv, line 2: expected 3 columns, found 2", "give every row one cell a column, n/a for what is missing, and put cells that hold the separator in double quotes" },
        { "site\tpair\tkohm\nn/a\ta-b\t3\n", "r.tsv, line 2: no site", "write the site in every line" },
        { "site\tpair\tkohm\ncheek\t\t3\n", "r.tsv, line 2: no pair", PairHint },
        { "site\tpair\tkohm\nchek\ta-b\t3\n", "r.tsv, line 2: site 'chek' is not in setup.toml", "did you mean 'cheek'? sites there: cheek, brow, eye" },
        { "site\tpair\tkohm\nchin\ta-b\t3\n", "r.tsv, line 2: site 'chin' is not in setup.toml", "sites there: cheek, brow, eye" },
        { "site\tpair\tkohm\nground\ta-b\t3\n", "r.tsv, line 2: the site is 'ground'", "write the site of the other contact, and a-ground or b-ground as its pair" },
        { "site\tpair\tkohm\ncheek\tcheek.a-eey.b\t3\n", "r.tsv, line 2: site 'eey' is not in setup.toml", "did you mean 'eye'? sites there: cheek, brow, eye" },
        { "site\tpair\tkohm\ncheek\tbrow.a-eye.b\t3\n", "r.tsv, line 2: pair 'brow.a-eye.b' has no electrode of site 'cheek'", "write one of the pair's two sites in the column site" },
        { "site\tpair\tkohm\ncheek\ta-c\t3\n", "r.tsv, line 2: 'a-c' is no pair of contacts", PairHint },
        { "site\tpair\tkohm\ncheek\tab\t3\n", "r.tsv, line 2: 'ab' is no pair of contacts", PairHint },
        { "site\tpair\tkohm\ncheek\ta-a\t3\n", "r.tsv, line 2: pair 'a-a' names one contact twice", PairHint },
        { "site\tpair\tkohm\ncheek\tground-ground\t3\n", "r.tsv, line 2: pair 'ground-ground' names one contact twice", PairHint },
        { "site\tpair\tkohm\ncheek\ta-b\t-3\n", "r.tsv, line 2: -3 kΩ is below zero", "a meter shows magnitudes of 0 and more: measure again, or write n/a" },
        { "site\tpair\tkohm\ncheek\ta-b\t4,8\n", "r.tsv, line 2: '4,8' is not a number in kΩ", "decimals have a dot: 4.8" },
        { "site\tpair\tkohm\ncheek\ta-b\tlow\n", "r.tsv, line 2: 'low' is not a number in kΩ", "write the number alone, in kΩ with a decimal dot, such as 4.8; n/a where the meter showed none" },
        { "site\tpair\tkohm\ncheek\ta-b\t4.8 kΩ\n", "r.tsv, line 2: '4.8 kΩ' is not a number in kΩ", "write the number alone, in kΩ with a decimal dot, such as 4.8; n/a where the meter showed none" },
        { "site\tpair\tkohm\ncheek\ta-b\tinfinity\n", "r.tsv, line 2: 'infinity' is not a number in kΩ", "write the number alone, in kΩ with a decimal dot, such as 4.8; n/a where the meter showed none" },
        { "site\tpair\tkohm\ncheek\ta-b\t4800\n", "r.tsv, line 2: 4800 kΩ is no contact on skin; is it in Ω?", "write kΩ: 4.8 if it is in Ω; n/a if the lead was open. Nothing is rescaled for you" },
        { "site\tpair\tkohm\ttime\ncheek\ta-b\t4\tnoon\n", "r.tsv, line 2: 'noon' is not a time of day", "write 10:05 or 2026-03-12T10:05, the same way in every line, or n/a" },
        { "site\tpair\tkohm\ttime\ncheek\ta-b\t4\t25:00\n", "r.tsv, line 2: '25:00' is not a time of day", "write 10:05 or 2026-03-12T10:05, the same way in every line, or n/a" },
        { "site\tpair\tkohm\ttime\ncheek\ta-b\t4\t10:05\ncheek\ta-b\t4\t2026-03-12T10:05\n", "r.tsv, line 3: a time with a date, after times without one", "write the date in every line, or in none" },
        { "site\tpair\tkohm\ttime\ncheek\ta-b\t4\t2026-03-12T10:05\ncheek\ta-b\t4\t10:05\n", "r.tsv, line 3: a time without a date, after times with one", "write the date in every line, or in none" },
        { "recording\tsite\tpair\tkohm\nK1\tcheek\ta-b\t4\nn/a\tcheek\ta-b\t4\n", "r.tsv, line 3: no recording", "write the recording's ID in every line, or leave that column out" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void EveryFaultHasItsText(string text, string message, string hint) => Core.Tests.Faults.AreExactly(message, hint, () => Read(text, Face));

    [Fact]
    public void WithoutASetupTheOtherLinesNameTheSites() => Core.Tests.Faults.AreExactly(
        "r.tsv, line 2: site 'eey' is not in the other lines of this table", "did you mean 'eye'? sites there: cheek, eye",
        () => Read("site\tpair\tkohm\ncheek\tcheek.a-eey.b\t3\neye\ta-b\t3\n"));

    [Theory]
    [InlineData("999.9", true)]
    [InlineData("1000", false)]
    public void NothingIsRescaled(string text, bool isTaken)
    {
        string table = $"site\tpair\tkohm\ncheek\ta-b\t{text}\n";
        if (isTaken)
        {
            Assert.Equal(999.9, Assert.Single(Read(table).Readings).Kohm);
        }
        else
        {
            Assert.Throws<ChannelAuditException>(() => Read(table));
        }
    }
}
