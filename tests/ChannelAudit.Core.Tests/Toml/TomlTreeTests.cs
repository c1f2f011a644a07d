using ChannelAudit.Toml;
using Xunit;

namespace ChannelAudit.Core.Tests.Toml;

public sealed class TomlTreeTests
{
    private const string SyntaxHint = "write key = value, [table], text in \"quotes\", lists in [brackets], decimals with a dot";

    // The rules are those of the published TOML specification, sections "Keys", "Table" and "Array of Tables".
    [Fact]
    public void DottedKeysHeadersAndInlineTablesMeanTheSame()
    {
        foreach (string toml in (string[])["[a.b]\nc = 1\n", "a.b.c = 1\n", "a = { b.c = 1 }\n", "a.b = { c = 1 }\n", "[a]\nb.c = 1\n"])
        {
            TomlNode c = TomlTree.Parse(toml, "f.toml").Entries["a"].Entries["b"].Entries["c"];

            Assert.Equal(TomlKind.Integer, c.Kind);
            Assert.Equal(1, c.Number);
        }
    }

    [Fact]
    public void EveryValueKnowsItsLine()
    {
        TomlNode root = TomlTree.Parse("# first\n[t]\n\nx = [\n  1,\n  2.5,\n]\n[[s]]\n[[s]]\ny = \"\"\"\na\nb\"\"\"\n", "f.toml");

        Assert.Equal(2, root.Entries["t"].Line);
        Assert.Equal(4, root.Entries["t"].Entries["x"].Line);
        Assert.Equal([5, 6], root.Entries["t"].Entries["x"].Items.Select(item => item.Line));
        Assert.Equal([8, 9], root.Entries["s"].Items.Select(item => item.Line));
        Assert.Equal(10, root.Entries["s"].Items[1].Entries["y"].Line);
    }

    [Fact]
    public void WindowsLinesAndAByteOrderMarkChangeNothing()
    {
        TomlNode root = TomlTree.Parse("[t]\r\nx = \"a\"\r\n", "f.toml");

        Assert.Equal("a", root.Entries["t"].Entries["x"].Text);
        Assert.Equal(2, root.Entries["t"].Entries["x"].Line);
    }

    [Theory]
    [InlineData("a = 1\nb: 2\n", "f.toml, line 2: not valid TOML: b: 2")]
    [InlineData("a = 50,0\n", "f.toml, line 1: not valid TOML: a = 50,0")]
    [InlineData("\n\nx = \n", "f.toml, line 3: not valid TOML: x =")]
    [InlineData("a = \"open\nb = 1\n", "f.toml, line 1: not valid TOML: a = \"open")]
    [InlineData("[a\nb = 1\n", "f.toml, line 1: not valid TOML: [a")]
    [InlineData("a = 1\nb = \"c\\", "f.toml, line 2: not valid TOML: b = \"c\\")]
    [InlineData("a = 99999999999999999999\n", "f.toml, line 1: not valid TOML: a = 99999999999999999999")]
    [InlineData("0       X\0X", "f.toml, line 1: not valid TOML: 0       X?X")]
    [InlineData("d = 2026-13-40\n", "f.toml, line 1: not valid TOML: d = 2026-13-40")]
    public void WhatIsNotTomlIsShownWithItsLine(string toml, string message) =>
        Faults.AreExactly(message, SyntaxHint, () => TomlTree.Parse(toml, "f.toml"));

    [Theory]
    [InlineData("a = 1\nb = 2\na = 3\n", "f.toml, line 3: 'a' is given twice, first in line 1")]
    [InlineData("[t]\nx = 1\n[u]\n[t]\ny = 2\n", "f.toml, line 4: 't' is given twice, first in line 1")]
    [InlineData("t = 1\n[t]\n", "f.toml, line 2: 't' is given twice, first in line 1")]
    [InlineData("t = { a = 1 }\nt.b = 2\n", "f.toml, line 2: 't' is given twice, first in line 1")]
    [InlineData("[[t]]\n[t]\n", "f.toml, line 2: 't' is given twice, first in line 1")]
    [InlineData("[t]\n[[t]]\n", "f.toml, line 2: 't' is given twice, first in line 1")]
    [InlineData("t = [{ a = 1 }]\n[[t]]\n", "f.toml, line 2: 't' is given twice, first in line 1")]
    [InlineData("t = { a = 1, a = 2 }\n", "f.toml, line 1: 'a' is given twice, first in line 1")]
    public void NothingIsGivenTwice(string toml, string message) =>
        Faults.AreExactly(message, "keep one of the two", () => TomlTree.Parse(toml, "f.toml"));

    [Fact]
    public void EndlessNestingIsRefused() => Faults.AreExactly(
        "f.toml: lists or tables nested too deeply",
        "no key of ours needs more than a table in a list",
        () => TomlTree.Parse("x = " + new string('[', 100_000), "f.toml"));

    // A recording or a picture given by mistake: a fault in every byte must not be a record in memory each.
    [Theory]
    [InlineData("\u0001", 1)]
    [InlineData("#\n\u0016", 2)]
    [InlineData("a = 1\n\n\u007F", 3)]
    [InlineData("a = \"\0", 1)]
    [InlineData("@", 1)]
    [InlineData("a = 1\n]", 2)]
    public void TheFirstFaultOfManyIsSaidAndTakesNoMemory(string start, int line)
    {
        string toml = start + new string(start[^1], 100_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => TomlTree.Parse(toml, "f.toml"));

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 16 * toml.Length);
        Assert.StartsWith(FormattableString.Invariant($"f.toml, line {line}: not valid TOML: "), fault.Message, StringComparison.Ordinal);
        Assert.InRange(fault.Message.Length, 1, 300);
    }
}
