using System.Buffers.Binary;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Cli.Tests.Demo;
using ChannelAudit.Excerpts;
using ChannelAudit.Reports.Bundles;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Cli.Tests.Verifying;

/// <summary><c>export bundle</c>, and <c>verify</c> on what it wrote.</summary>
public sealed class BundleTests
{
    [Fact]
    public async Task EveryExclusionIsConfirmedFromTheBundleAlone()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        string again = await Export(study, "b.zip");
        Directory.Delete(study.Data, recursive: true);

        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        Assert.Equal(await File.ReadAllBytesAsync(zip), await File.ReadAllBytesAsync(again));
        Assert.DoesNotContain("  differs", run.Output, StringComparison.Ordinal);
        Assert.Contains("ok           exclusions  4 confirmed, 0 differ, 2 not checkable from the bundle; each is below\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("\nExclusions: 4 confirmed, 0 differ, 2 not checkable from the bundle\n", run.Output, StringComparison.Ordinal);
        Assert.Matches("  confirmed +b, cheek, trial 1, reject \\(line-noise[^)]*\\): line-noise: line_rms 28\\.[0-9]+ uV \\(limit 5\\), line_ratio [0-9.]+ dB \\(limit 0\\)", run.Output);
        Assert.Contains("not checkable  b, cheek, the channel, reject", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task NothingOfThisMachineIsInIt()
    {
        using SmallStudy study = await SmallStudy.Make();
        using ZipArchive zip = await ZipFile.OpenReadAsync(await Export(study, "a.zip"));

        Assert.Contains("samples/2-sub+a/1-cheek/1.f64", zip.Entries.Select(entry => entry.FullName), StringComparer.Ordinal);
        Assert.DoesNotContain("samples/2-sub+a/2-brow/1.f64", zip.Entries.Select(entry => entry.FullName), StringComparer.Ordinal);
        Assert.Contains("inputs/criteria/lab.toml", zip.Entries.Select(entry => entry.FullName), StringComparer.Ordinal);
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            using StreamReader reader = new(await entry.OpenAsync());
            Assert.DoesNotContain(study.In(string.Empty), await reader.ReadToEndAsync(), StringComparison.Ordinal);
            Assert.Equal(1980, entry.LastWriteTime.Year);
        }
    }

    [Fact]
    public async Task OneChangedSampleIsFoundEvenUnderAChangedHash()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        byte[] samples = Read(zip, "samples/1-b/1-cheek/2.f64");
        string then = Hash(samples);
        samples[(8 * 1700) + 5] ^= 1;
        Replace(zip, "samples/1-b/1-cheek/2.f64", samples);
        CommandRun open = await DemoRun.Run("verify", zip);
        Replace(zip, "bundle.json", Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Read(zip, "bundle.json")).Replace(then, Hash(samples), StringComparison.Ordinal)));
        CommandRun covered = await DemoRun.Run("verify", zip);

        Assert.Equal((ExitCode.Reached, ExitCode.Reached), (open.Code, covered.Code));
        Assert.Contains("differs      entries     samples/1-b/1-cheek/2.f64 has other bytes than bundle.json lists\n", open.Output, StringComparison.Ordinal);
        Assert.Contains("ok           entries", covered.Output, StringComparison.Ordinal);
        Assert.Contains("differs      exclusions  3 confirmed, 1 differ, 2 not checkable from the bundle; each is below\n", covered.Output, StringComparison.Ordinal);
        Assert.Contains("\n1 check of ", covered.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Everything that was checked is the same", covered.Output, StringComparison.Ordinal);
        Assert.Contains("Exclusions: 3 confirmed, 1 differ, 2 not checkable", covered.Output, StringComparison.Ordinal);
        Assert.Matches("  differs +b, cheek, trial 2, reject \\([^)]*\\): [a-z_]+ is [-0-9.E]+ in the audit and [-0-9.E]+ in the samples", covered.Output);
    }

    [Fact]
    public async Task OneChangedDigitOfATableOrAResultIsFound()
    {
        using SmallStudy study = await SmallStudy.Make();
        string table = await Export(study, "a.zip");
        Change(table, "audit/recordings/b/measures.tsv", "line_rms\t2", "line_rms\t3");
        string result = await Export(study, "b.zip");
        Change(result, "audit/recordings/b/result.json", "\n      {\"measure\":\"line_rms\",\"value\":2", "\n      {\"measure\":\"line_rms\",\"value\":3");

        CommandRun ofTable = await DemoRun.Run("verify", table);
        CommandRun ofResult = await DemoRun.Run("verify", result);

        Assert.Equal((ExitCode.Reached, ExitCode.Reached), (ofTable.Code, ofResult.Code));
        Assert.Contains("First difference: recordings/b/measures.tsv, line 2, column value (cheek, 1, line_rms)\n  there: 3", ofTable.Output, StringComparison.Ordinal);
        Assert.Matches("  differs +b, cheek, trial 1, reject \\([^)]*\\): line_rms is 38[0-9.]+ in the audit and 28[0-9.]+ in the samples", ofResult.Output);
    }

    [Fact]
    public async Task DecisionsAreReplayedAndAChangedLineIsNamed()
    {
        using SmallStudy study = await SmallStudy.Make();
        await study.Decide("--channel", "cheek", "--trial", "1", "--verdict", "pass");
        await study.Decide("--channel", "brow", "--trial", "2", "--verdict", "reject");
        string zip = await Export(study, "a.zip");
        CommandRun whole = await DemoRun.Run("verify", zip);
        Change(zip, "audit/decisions.jsonl", "\"verdict\":\"reject\"", "\"verdict\":\"pass\"");
        CommandRun changed = await DemoRun.Run("verify", zip);

        Assert.Equal((ExitCode.Done, ExitCode.Reached), (whole.Code, changed.Code));
        Assert.Matches("confirmed +b, cheek, trial 1, pass \\(line-noise", whole.Output);
        Assert.Contains("b, brow, trial 2, reject", whole.Output, StringComparison.Ordinal);
        Assert.Contains("a person's decision over questionable, replayed from the ledger;", whole.Output, StringComparison.Ordinal);
        Assert.Matches("differs +decisions +audit/decisions\\.jsonl, line 1: changed since it was written", changed.Output);
    }

    [Fact]
    public async Task ALimitThatWasMovedNoLongerGivesTheVerdict()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        Change(zip, "audit/audit.json", "{\"line_rms\":5,", "{\"line_rms\":9000,");

        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("the limits in audit.json do not have the SHA-256 that stands beside them", run.Output, StringComparison.Ordinal);
        Assert.Contains("line-noise: the limits give questionable, the audit says reject", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnExclusionWithoutItsSamplesOrOffTheListIsNamed()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        Remove(zip, "samples/1-b/1-cheek/1.f64");
        Change(zip, "bundle.json", "{\"recording\":\"b\",\"channel\":\"cheek\",\"trial\":2,", "{\"recording\":\"b\",\"channel\":\"cheek\",\"trial\":7,");

        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal(ExitCode.Reached, run.Code);
        Assert.Contains("samples/1-b/1-cheek/1.f64 is missing", run.Output, StringComparison.Ordinal);
        Assert.Contains("b, cheek, trial 1, reject", run.Output, StringComparison.Ordinal);
        Assert.Contains(": its samples are not in the bundle\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("b, cheek, trial 2 (reject", run.Output, StringComparison.Ordinal);
        Assert.Contains("is left out in the audit and not listed", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task QuestionableTrialsComeWhenAskedFor()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "all.zip", "--questionable");

        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Contains("brow, trial 1, questionable", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("  differs", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HarmfulAndDamagedArchivesAreRefused()
    {
        using SmallStudy study = await SmallStudy.Make();
        string good = await Export(study, "good.zip");
        byte[] bytes = await File.ReadAllBytesAsync(good);
        await File.WriteAllBytesAsync(study.In("cut.zip"), bytes[..(bytes.Length / 2)]);
        await File.WriteAllBytesAsync(study.In("text.zip"), "not a zip"u8.ToArray());
        bytes[200] ^= 0xFF;
        await File.WriteAllBytesAsync(study.In("flipped.zip"), bytes);
        (string File, string Found)[] cases =
        [
            (study.In("cut.zip"), "no zip archive, or a damaged one"),
            (study.In("text.zip"), "no zip archive, or a damaged one"),
            (study.In("flipped.zip"), string.Empty),
            (Made(study, "out.zip", ("../evil.txt", 10)), "a name that leads elsewhere"),
            (Made(study, "root.zip", ("/etc/evil", 10)), "a name that leads elsewhere"),
            (Made(study, "back.zip", ("a\\..\\evil", 10)), "a name that leads elsewhere"),
            (Made(study, "twice.zip", ("audit/a.tsv", 10), ("audit/a.tsv", 10)), "a name that stands there twice"),
            (Made(study, "bomb.zip", ("audit/audit.json", 200_000_000)), "packed so tightly that it would burst"),
            (Made(study, "huge.zip", ("samples/a.f64", 300_000_000)), "larger than any file of a bundle"),
            (Claiming(study, "claims.zip", 10, 16_000_000), "not as long as the archive says"),
            (Made(study, "none.zip", ("readme.txt", 10)), "there is no bundle.json in it"),
        ];

        foreach ((string file, string found) in cases)
        {
            CommandRun run = await DemoRun.Run("verify", file);

            Assert.NotEqual(ExitCode.Done, run.Code);
            Assert.NotEqual(ExitCode.Bug, run.Code);
            Assert.Contains(found, run.Error, StringComparison.Ordinal);
            Assert.True(run.Error.Length == 0 || (run.Error.StartsWith("error: ", StringComparison.Ordinal) && run.Error.Contains("\nhint: ", StringComparison.Ordinal)), run.Error);
        }

        Assert.Empty(Directory.GetFiles(study.In("."), "evil*"));
    }

    [Fact]
    public async Task AnIndexThatLiesIsNoCrash()
    {
        using SmallStudy study = await SmallStudy.Make();
        (string From, string To, string Found)[] lies =
        [
            ("\"start\":", "\"start\":9223372036854775807,\"x\":", "samples that lie outside of their window"),
            ("\"length\":", "\"length\":-", "samples that lie outside of their window"),
            ("\"rate_numerator\":", "\"rate_numerator\":0,\"x\":", "not part of a sampling rate from 1 to 100000 Hz"),
            ("\"rate_numerator\":", "\"rate_numerator\":1000000,\"x\":", "not part of a sampling rate from 1 to 100000 Hz"),
            ("\"rate_denominator\":", "\"rate_denominator\":1000000000,\"x\":", "not part of a sampling rate from 1 to 100000 Hz"),
            ("\"rate_numerator\":", "\"rate_numerator\":99991,\"x\":", string.Empty),
            ("\"mains_hz\":", "\"mains_hz\":1e300,\"x\":", "mains_hz: not a number from 10 to 500"),
            ("\"notched_harmonics\":[", "\"notched_harmonics\":[1e300", "notched_harmonics: not a list of at most 1000 numbers from 1 to 1000"),
            ("\"highpass_hz\":", "\"highpass_hz\":-1,\"x\":", "highpass_hz: not a number from 0.01 to 400"),
            ("\"notches_hz\":[", "\"notches_hz\":[-5", "notches_hz: not a list of at most 1000 numbers from 1 to 100000"),
            ("\"recordings\": [", "\"recordings\": [], \"y\": [", string.Empty),
            ("channelaudit-bundle/1", "channelaudit-bundle/9", "format: not 'channelaudit-bundle/1'"),
            ("\"channel\":\"cheek\"", "\"channel\":\"nose\"", string.Empty),
        ];
        await RequireNoCrash(study, "bundle.json", lies);
    }

    [Fact]
    public async Task AResultThatLiesIsNoCrash()
    {
        using SmallStudy study = await SmallStudy.Make();
        (string From, string To, string Found)[] lies =
        [
            ("\"name\": \"brow\"", "\"name\": \"cheek\"", "a channel that stands there twice"),
            ("\"window_to_s\":", "\"window_to_s\":1e20,\"x\":", "a trial at a time that no recording has"),
            ("\"window_from_s\":", "\"window_from_s\":-1e27,\"x\":", "a trial at a time that no recording has"),
            ("\"pairs\": [", "\"pairs\": [], \"y\": [", string.Empty),
        ];
        await RequireNoCrash(study, "audit/recordings/b/result.json", lies);
    }

    [Fact]
    public async Task NamesThatDifferByCapitalsOnlyAreToldApart()
    {
        using SmallStudy study = await SmallStudy.Make();
        study.Write("case/S.csv", SmallStudy.Samples(7907).Replace("EMG 1,EMG 2", "EMG a,EMG A", StringComparison.Ordinal));
        study.Write("case/S_events.tsv", "onset\tduration\ttrial_type\n0\t2\tlook\n2\t2\tlisten\n");
        string zip = study.In("case.zip");
        await DemoRun.Run("screen", study.In("case"), "--figures", "none", "--out", study.In("case-audit"));
        CommandRun export = await DemoRun.Run("export", "bundle", study.In("case-audit"), "--data", study.In("case"), "--to", zip, "--questionable");
        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal((ExitCode.Done, ExitCode.Done, string.Empty), (export.Code, run.Code, run.Error));
        using ZipArchive archive = await ZipFile.OpenReadAsync(zip);
        string[] samples = [.. archive.Entries.Select(entry => entry.FullName).Where(path => path.StartsWith("samples/", StringComparison.Ordinal))];
        Assert.Contains("samples/1-S/1-EMG%20a/1.f64", samples, StringComparer.Ordinal);
        Assert.Contains("samples/1-S/2-EMG%20A/1.f64", samples, StringComparer.Ordinal);
        Assert.Equal(samples.Length, samples.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    [Fact]
    public async Task TwoEntriesThatCannotStandBesideEachOtherAreOneErrorAndOneHint()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        using (ZipArchive archive = await ZipFile.OpenAsync(zip, ZipArchiveMode.Update))
        {
            archive.CreateEntry("audit/verdicts.tsv/inside.tsv");
        }

        CommandRun run = await DemoRun.Run("verify", zip);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Matches("^error: [^\n]+, audit/verdicts.tsv/inside.tsv: cannot be unpacked beside the others: [^\n]+\nhint: [^\n]+\n$", run.Error);
    }

    [Fact]
    public async Task SamplesThatABundleCannotTakeAreListedAndNotCalledDifferent()
    {
        using SmallStudy study = await SmallStudy.Make();
        RecordedRun run = RecordedRun.Read(study.Audit);
        StudySetup setup = SetupFile.Read(study.In("setup.toml"));
        int omitted;
        using (BundleWriter writer = new(study.In("long.zip")))
        {
            // 3 s at 1000 Hz and 8 bytes a sample: just too much.
            BundleExport export = new(run, writer, Grade.Reject) { LargestBlock = 23_999 };
            export.AddAudit();
            foreach (StoredRecording recording in run.Audit.Recordings)
            {
                export.AddRecording(
                    recording,
                    () => ExcerptSource.Open(new RecordingEntry(recording.Id, Path.Combine(study.Data, recording.Path), recording.Path), setup, null, CancellationToken.None),
                    CancellationToken.None);
            }

            export.Complete();
            omitted = export.Omitted;
        }

        CommandRun verified = await DemoRun.Run("verify", study.In("long.zip"));

        Assert.Equal(4, omitted);
        Assert.Equal((ExitCode.Done, string.Empty), (verified.Code, verified.Error));
        Assert.Contains("not checked  exclusions  0 confirmed, 0 differ, 6 not checkable from the bundle; each is below\n", verified.Output, StringComparison.Ordinal);
        Assert.Contains("its samples are left out: too long a window, or too high or low a rate, for a bundle", verified.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AFileThatIsNotTheOneListedIsNotExported()
    {
        using SmallStudy study = await SmallStudy.Make();
        study.Change("audit/verdicts.tsv", "reject", "pass");

        CommandRun run = await DemoRun.Run("export", "bundle", study.Audit, "--data", study.Data, "--to", study.In("a.zip"));

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith($"error: {study.Audit}/verdicts.tsv: not with the bytes that audit.json lists\nhint: ", run.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(study.In("."), "a.zip*"));
    }

    [Fact]
    public async Task WrongUsageIsOneErrorAndOneHint()
    {
        using SmallStudy study = await SmallStudy.Make();
        string zip = await Export(study, "a.zip");
        study.Change("study/b.csv", "0.098,-1", "0.098,-3");
        CommandRun[] runs =
        [
            await DemoRun.Run("export", "bundle", study.Audit, "--data", study.Data, "--to", zip),
            await DemoRun.Run("export", "bundle", study.Audit, "--data", study.Data, "--to", study.In("nowhere/a.zip")),
            await DemoRun.Run("export", "bundle", study.Audit, "--to", study.In("b.zip")),
            await DemoRun.Run("export", "bundle", study.Audit, "--data", study.Data, "--to", study.In("b.zip")),
            await DemoRun.Run("verify", zip, "--data", study.Data),
        ];

        Assert.All(runs, run => Assert.Matches("^error: [^\n]+\nhint: [^\n]+\n$", run.Error));
        Assert.Equal([ExitCode.Usage, ExitCode.Usage, ExitCode.Usage, ExitCode.Unread, ExitCode.Usage], runs.Select(run => run.Code));
        Assert.Contains("b.csv has other bytes than were audited", runs[3].Error, StringComparison.Ordinal);
        Assert.EndsWith("\nhint: name another file with --to\n", runs[0].Error, StringComparison.Ordinal);
        Assert.EndsWith("\nhint: make the folder first, or name a file elsewhere with --to\n", runs[1].Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(study.In("."), "b.zip*"));
    }

    private static async Task<string> Export(SmallStudy study, string name, params string[] more)
    {
        CommandRun run = await DemoRun.Run(["export", "bundle", study.Audit, "--data", study.Data, "--to", study.In(name), .. more]);
        Assert.Equal((ExitCode.Done, string.Empty), (run.Code, run.Error));
        return study.In(name);
    }

    private static async Task RequireNoCrash(SmallStudy study, string entry, (string From, string To, string Found)[] lies)
    {
        string whole = await Export(study, "whole.zip");
        for (int i = 0; i < lies.Length; i++)
        {
            string zip = study.In(FormattableString.Invariant($"{i}.zip"));
            File.Copy(whole, zip);
            Change(zip, entry, lies[i].From, lies[i].To);

            CommandRun run = await DemoRun.Run("verify", zip);

            Assert.True(run.Code is ExitCode.Usage or ExitCode.Reached, FormattableString.Invariant($"{lies[i].From}: {run.Code} {run.Error}"));
            Assert.Contains(lies[i].Found, run.Output + run.Error, StringComparison.Ordinal);
        }
    }

    private static string Made(SmallStudy study, string name, params (string Path, int Bytes)[] entries)
    {
        using FileStream stream = File.Create(study.In(name));
        using ZipArchive zip = new(stream, ZipArchiveMode.Create);
        foreach ((string path, int bytes) in entries)
        {
            using Stream entry = zip.CreateEntry(path, CompressionLevel.SmallestSize).Open();
            entry.Write(new byte[bytes]);
        }

        return study.In(name);
    }

    // The directory's own entry says how long a file is when unpacked (APPNOTE.TXT 4.3.12: 24 bytes behind the signature).
    private static string Claiming(SmallStudy study, string name, int bytes, int claimed)
    {
        string path = Made(study, name, ("samples/1-a/1-brow/1.f64", bytes));
        byte[] zip = File.ReadAllBytes(path);
        BinaryPrimitives.WriteInt32LittleEndian(zip.AsSpan(zip.AsSpan().IndexOf("PK\u0001\u0002"u8) + 24), claimed);
        File.WriteAllBytes(path, zip);
        return path;
    }

    private static byte[] Read(string zip, string path)
    {
        using ZipArchive archive = ZipFile.OpenRead(zip);
        using Stream stream = archive.GetEntry(path)!.Open();
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static void Change(string zip, string path, string from, string to)
    {
        string text = Encoding.UTF8.GetString(Read(zip, path));
        int place = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(place >= 0, $"{path} has no '{from}'");
        Replace(zip, path, Encoding.UTF8.GetBytes(string.Concat(text.AsSpan(0, place), to, text.AsSpan(place + from.Length))));
    }

    private static void Replace(string zip, string path, byte[] bytes)
    {
        using ZipArchive archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        archive.GetEntry(path)!.Delete();
        using Stream stream = archive.CreateEntry(path).Open();
        stream.Write(bytes);
    }

    private static void Remove(string zip, string path)
    {
        using ZipArchive archive = ZipFile.Open(zip, ZipArchiveMode.Update);
        archive.GetEntry(path)!.Delete();
    }

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
