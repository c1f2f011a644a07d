using ChannelAudit.Criteria;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Stored;

public sealed class StoredAuditTests : IDisposable
{
    private const string Result = "recordings/day1+p07/result.json";

    private readonly TemporaryFolder _folder = new();

    public StoredAuditTests() => SampleResults.Run().Write(_folder.Path, figures: null, CancellationToken.None);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void WhatWasWrittenIsReadBack()
    {
        SampleRun run = SampleResults.Run();

        StoredAudit audit = StoredAudit.Open(_folder.Path);

        Assert.Equal(run.Version, audit.Version);
        Assert.Equal(CriteriaText.Canonical(run.Criteria), CriteriaText.Canonical(audit.Criteria));
        Assert.Equal((run.Criteria.Sha256, run.Criteria.FileName), (audit.Criteria.Sha256, audit.Criteria.FileName));
        Assert.Equal(new StoredInput(run.Setup.FileName, run.Setup.Sha256), audit.Setup);
        Assert.Equal(new StoredInput(run.Impedance!.FileName, run.Impedance.Sha256), audit.Impedance);
        Assert.Equal(run.Recordings.Select(one => new StoredRecording(one.Id, one.Path, one.Sha256, one.Participant)), audit.Recordings);
        Assert.Equal(run.Unread.Select(one => one.Path), audit.Unread.Select(one => one.Path), StringComparer.Ordinal);
        ResultOrigin origin = new(run.Version, run.Criteria.Sha256, run.Setup.Sha256);
        Assert.All(audit.Recordings.Zip(run.Recordings), pair =>
            Assert.Equal(ResultWriter.Render(pair.Second, origin), ResultWriter.Render(audit.ResultOf(pair.First), origin)));
    }

    [Fact]
    public void AFolderWithoutAnAuditIsNamed()
    {
        using TemporaryFolder empty = new();
        empty.Put("foreign/audit.json", "{\"format\": \"another/1\"}");
        empty.Put("list/audit.json", "[]");

        Assert.Equal($"{empty.Path}: not an audit: there is no audit.json of channelaudit in it", Fault(empty.Path));
        Assert.Equal($"{empty.Path}/no: there is no such folder", Fault($"{empty.Path}/no"));
        Assert.Equal($"{empty.Path}/list/audit.json: a file, not the folder of an audit", Fault($"{empty.Path}/list/audit.json"));
        Assert.EndsWith("not an audit: there is no audit.json of channelaudit in it", Fault($"{empty.Path}/foreign"), StringComparison.Ordinal);
        Assert.EndsWith("not an audit: there is no audit.json of channelaudit in it", Fault($"{empty.Path}/list"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"format\": \"channelaudit-audit/1\"", "\"format\": \"channelaudit-audit/9\"", "audit.json, format: 'channelaudit-audit/9' instead of 'channelaudit-audit/1'")]
    [InlineData("\"version\": \"0.1.0\"", "\"version\": 1", "audit.json, version: not a text")]
    [InlineData("\"id\":\"day1", "\"id\":\"../day1", "audit.json, recordings[0].id: not an id of a recording")]
    [InlineData("\"line_rms\":1,", "\"line_rms\":\"1\",", "audit.json, criteria.limits[0].questionable[0].line_rms: not a number")]
    [InlineData("\"id\":\"day1\\u002Bp08\"", "\"id\":\"day1\\u002Bp07\"", "audit.json, recordings: not a list with each id once")]
    [InlineData("{", "", "audit.json, line 2: not JSON")]
    public void WhatIsDamagedIsNamedWithItsPlace(string was, string isNow, string message)
    {
        string text = _folder.Read("audit.json");
        int at = text.IndexOf(was, StringComparison.Ordinal);
        Assert.True(at >= 0, was);
        _folder.Put("audit.json", text[..at] + isNow + text[(at + was.Length)..]);

        Assert.EndsWith(message, Fault(_folder.Path), StringComparison.Ordinal);
    }

    [Fact]
    public void AResultThatIsGoneDamagedOrOfAnotherAuditIsNamed()
    {
        StoredAudit audit = StoredAudit.Open(_folder.Path);
        string text = _folder.Read(Result);

        _folder.Put(Result, text.Replace("\"version\": \"0.1.0\"", "\"version\": \"0.0.9\"", StringComparison.Ordinal));
        Assert.Equal($"{_folder.Path}/{Result}: belongs to another audit than audit.json beside it", ResultFault(audit));
        _folder.Put(Result, text[..^20]);
        Assert.Contains(": not JSON", ResultFault(audit), StringComparison.Ordinal);
        File.Delete(Path.Combine(_folder.Path, Result));
        Assert.Equal($"{_folder.Path}/{Result}: listed in audit.json, but not there", ResultFault(audit));
    }

    private static string Fault(string folder) => Assert.Throws<ChannelAuditException>(() => StoredAudit.Open(folder)).Message;

    private static string ResultFault(StoredAudit audit) =>
        Assert.Throws<ChannelAuditException>(() => audit.ResultOf(audit.Recordings[0])).Message;
}
