using System.Text;
using ChannelAudit.TestKit;
using ChannelAudit.Toml;
using Xunit;

namespace ChannelAudit.Core.Tests.Toml;

public sealed class TomlFileTests
{
    [Fact]
    public void HashIsThatOfTheBytes()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("a.toml", "abc");

        // The SHA-256 of "abc" is the first example in NIST's published SHA-256 examples.
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", TomlFile.Read(path).Sha256);
    }

    [Fact]
    public void AByteOrderMarkIsNotPartOfTheText()
    {
        using var folder = new TemporaryFolder();
        string path = folder.In("a.toml");
        File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, (byte)'a']);

        Assert.Equal("a", TomlFile.Read(path).Content);
    }

    [Fact]
    public void WhatIsNotThereIsSaid() => Faults.AreExactly(
        "no/such.toml: there is no such file", "give the path of a file that exists", () => TomlFile.Read("no/such.toml"));

    [Fact]
    public void AFolderIsNoFile()
    {
        using var folder = new TemporaryFolder();

        Faults.AreExactly(
            $"{folder.Folder}: is a folder, not a file", "give the file inside the folder", () => TomlFile.Read(folder.Folder));
    }

    [Fact]
    public void Latin1TextIsRefused()
    {
        using var folder = new TemporaryFolder();
        string path = folder.In("a.toml");
        File.WriteAllBytes(path, Encoding.Latin1.GetBytes("unit = \"µV\""));

        Faults.AreExactly("a.toml: not UTF-8 text", "save it as plain text in UTF-8", () => TomlFile.Read(path));
    }

    [Fact]
    public void ARecordingGivenByMistakeIsNotReadIntoMemory()
    {
        using var folder = new TemporaryFolder();
        string path = folder.In("a.edf");
        using (FileStream stream = File.Create(path))
        {
            stream.SetLength((1L << 20) + 1);
        }

        Faults.AreExactly(
            "a.edf: larger than 1 MiB, so it is no TOML file of ours", "give a text file in TOML, not a recording", () => TomlFile.Read(path));
    }
}
