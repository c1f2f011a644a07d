using System.IO.Compression;
using System.Text;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Cli.Tests.Piloting;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Documents;

/// <summary>Words planted in every field of a header that may hold something about a person are in no output, whatever the command.</summary>
public sealed class PrivateFieldsTests : IDisposable
{
    // Where each stands (Kemp et al. 1992; Kemp & Olivan 2003): patient and recording, the reserved 44 bytes behind the format, transducers, reserved bytes of signals.
    private const string Patient = "ZQCODE1 F 02-MAY-1951 ZQNAME2_ZQNAME3";
    private const string Session = "Startdate 02-MAR-2026 ZQADMIN4 ZQTECH5 ZQEQUIP6";

    private const string Exclusions = "recording\tchannel\ttrial\treason\nP1\tn/a\t1\tcoughed\nP9\tn/a\t1\tgone\n";
    private const string Labels = "recording\tchannel\ttrial\trater\tlabel\nP1\tEMG cheek\t1\tA\tbad\nP1\tEMG cheek\t1\tB\tgood\nP2\tEMG cheek\t1\tA\tgood\nP2\tEMG cheek\t1\tB\tgood\n";

    private readonly TemporaryFolder _folder = new();
    private readonly StringBuilder _said = new();

    public PrivateFieldsTests()
    {
        Directory.CreateDirectory(_folder.In("study"));
        SessionPlan plan = PilotFolder.Plan(2);
        EdfFiles.Write(MadeRecording.Make(PilotFolder.Plan(1)), _folder.In("study/P1.edf"));
        EdfFiles.Write(MadeRecording.Make(plan with { Amplifier = plan.Amplifier with { Bits = 24 } }), _folder.In("study/P2.bdf"));
        Plant(_folder.In("study/P1.edf"));
        Plant(_folder.In("study/P2.bdf"));
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task NothingOfThemIsInAnyOutputNorWhereTheStudyLies()
    {
        string first = _folder.In("study/P1.edf");
        await Run("screen", _folder.In("study"), "--out", _folder.In("audit"), "--figures", "all", "--verbose");
        string said = _said.ToString();
        await Run("decide", _folder.In("audit"), "--recording", "P1", "--trial", "1", "--verdict", "reject", "--reason", "coughed", "--by", "R. Viewer");
        await Run("pilot", first, "--out", _folder.In("pilot"), "--verbose");
        await Run("pilot", _folder.In("study/P2.bdf"), "--out", _folder.In("pilot-of-bdf"), "--verbose");
        await Run("detectability", first, "--faults", "dropout", "--repeats", "1", "--out", _folder.In("found"), "--verbose");
        await Run("verify", _folder.In("audit"), "--data", _folder.In("study"), "--no-pictures", "--verbose");
        await Run("export", "bundle", _folder.In("audit"), "--data", _folder.In("study"), "--to", _folder.In("bundle.zip"), "--verbose");
        await Run("verify", _folder.In("bundle.zip"), "--verbose");
        await Run("export", "bids", _folder.In("audit"), "--to", _folder.In("bids"), "--verbose");
        await Run("setup", "new", first, "--out", _folder.In("setup.toml"));
        await Run("setup", "check", _folder.In("setup.toml"), first, "--verbose");
        await Run("screen", first, "--setup", _folder.In("setup.toml"), "--out", _folder.In("again"), "--figures", "none", "--verbose");
        await Run("compare", _folder.In("audit"), _folder.In("again"), "--out", _folder.In("changes.tsv"), "--verbose");
        await Run("reconcile", _folder.In("audit"), _folder.Write("exclusions.tsv", Exclusions), "--out", _folder.In("answers.tsv"), "--verbose");
        await Run("raters", _folder.In("audit"), _folder.Write("labels.tsv", Labels), "--out", _folder.In("raters"), "--verbose");
        await ZipFile.ExtractToDirectoryAsync(_folder.In("bundle.zip"), _folder.In("bundle"));

        string[] outputs = ["audit", "pilot", "pilot-of-bdf", "found", "bids", "bundle", "setup.toml", "again", "changes.tsv", "answers.tsv", "raters"];
        Assert.All(outputs, name => Assert.True(Path.Exists(_folder.In(name)), name));
        Assert.All(outputs.SelectMany(Files), file => Assert.False(HoldsMarker(File.ReadAllBytes(file)), file));
        Assert.All(outputs.SelectMany(Files), file => Assert.False(HoldsPlace(File.ReadAllBytes(file)), file));
        Assert.DoesNotContain("ZQ", _said.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("1951", _said.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, said.Split("of 2 headers 2 has words about the participant").Length - 1);
    }

    [Theory]
    [InlineData("P1.edf")]
    [InlineData("P2.bdf")]
    public async Task AHeaderThatCannotBeReadIsRefusedWithoutThem(string name)
    {
        for (int place = 0; place < 1536; place += 8)
        {
            string file = _folder.In("study/" + name);
            byte[] whole = await File.ReadAllBytesAsync(file);
            byte[] broken = [.. whole[..4096]];
            Encoding.ASCII.GetBytes("?!?!?!?!").CopyTo(broken, place);
            string changed = _folder.In("broken" + Path.GetExtension(name));
            await File.WriteAllBytesAsync(changed, broken);

            await Run("screen", changed, "--out", _folder.In("broken"), "--figures", "none");
        }

        Assert.DoesNotContain("ZQ", _said.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("1951", _said.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("X X X X", "Startdate X X X X", false)]
    [InlineData("", "", false)]
    [InlineData("X F X X", "Startdate 02-MAR-2026 X X X", false)]
    [InlineData("P07 X X X", "Startdate X X X X", true)]
    [InlineData("X X 02-MAY-1951 X", "Startdate X X X X", true)]
    [InlineData("X X X X", "Startdate 02-MAR-2026 X T3 X", true)]
    [InlineData("X X X X", "second day", true)]
    public void WhatTellsSomethingIsToldFromWhatTellsNothing(string patient, string session, bool expected)
    {
        string file = _folder.In("study/P1.edf");
        Fill(file, patient, session);

        Assert.Equal(expected, EdfPersonFields.AreFilledIn(file));
    }

    private static void Plant(string file)
    {
        Fill(file, Patient, Session);
        byte[] bytes = File.ReadAllBytes(file);
        int signals = int.Parse(Encoding.ASCII.GetString(bytes, 252, 4), System.Globalization.CultureInfo.InvariantCulture);
        Encoding.ASCII.GetBytes("ZQRESERVED7").CopyTo(bytes, 192 + 8);
        for (int signal = 0; signal < signals; signal++)
        {
            Encoding.ASCII.GetBytes("ZQTRANSDUCER8").CopyTo(bytes, 256 + (signals * 16) + (signal * 80));
            Encoding.ASCII.GetBytes("ZQSIGNAL9").CopyTo(bytes, 256 + (signals * 224) + (signal * 32));
        }

        File.WriteAllBytes(file, bytes);
    }

    private static void Fill(string file, string patient, string session)
    {
        byte[] bytes = File.ReadAllBytes(file);
        Encoding.ASCII.GetBytes(patient.PadRight(80) + session.PadRight(80)).CopyTo(bytes, 8);
        File.WriteAllBytes(file, bytes);
    }

    private static bool HoldsMarker(byte[] bytes) => bytes.AsSpan().IndexOf("ZQ"u8) >= 0 && Encoding.Latin1.GetString(bytes) is { } text
        && new[] { "ZQCODE", "ZQNAME", "ZQADMIN", "ZQTECH", "ZQEQUIP", "ZQRESERVED", "ZQTRANSDUCER", "ZQSIGNAL" }.Any(word => text.Contains(word, StringComparison.Ordinal));

    // The folder of the study, and that of the person.
    private bool HoldsPlace(byte[] bytes) => new[] { _folder.Folder, Environment.GetFolderPath(Environment.SpecialFolder.UserProfile) + "/" }
        .Any(place => place.Length > 1 && bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(place)) >= 0);

    private IEnumerable<string> Files(string name) => Directory.Exists(_folder.In(name)) ? Directory.EnumerateFiles(_folder.In(name), "*", SearchOption.AllDirectories) : [_folder.In(name)];

    private async Task Run(params string[] words)
    {
        CommandRun run = await CommandRun.With(new AuditEngine(new()), CancellationToken.None, words);
        _said.Append(run.Output).Append(run.Error);
        Assert.True(run.Code is ExitCode.Done or ExitCode.Unread or ExitCode.Usage || words[0] is "pilot" or "compare" or "reconcile" or "verify", run.Error);
    }
}
