using System.Text;
using System.Text.Json;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.TestKit;
using Json.Schema;
using Xunit;

namespace ChannelAudit.Reports.Tests.Shares;

/// <summary><c>share.json</c> against its schema, judged by JsonSchema.Net, a general-purpose library, and read back.</summary>
public sealed class ShareJsonTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(RepositoryRoot.Fixture("../docs/schemas/share.schema.json")));

    private static readonly ShareManifest Share = new(
        "0.1.0",
        new SharePlan(new RecordingShare(2, 3), [new("K01", string.Empty, "a/K01.edf"), new("K02", string.Empty, "a/K02.edf"), new("K03", string.Empty, "a/K03.edf")], "summary", false),
        [new RunInput(RunInput.Setup, "setup.toml", [.. "# a setup"u8]), new RunInput(RunInput.Events, "trials.tsv", [0xff, 0xfe])],
        [("K02", new string('a', 64))],
        [new UnreadRecording("a/K09.edf", "K09.edf: \u201cshort\u201d", "copy it again")]);

    [Fact]
    public void ItFitsItsSchemaAndComesBackAsItWas()
    {
        byte[] rendered = ShareJson.Render(Share);

        using JsonDocument document = JsonDocument.Parse(rendered);
        Assert.True(Schema.Evaluate(document.RootElement).IsValid);
        Assert.Equal(rendered, ShareJson.Render(ShareJson.Read(rendered, "share.json")));
    }

    [Theory]
    [InlineData("\"share\": 2", "\"share\": 4", "share: not one of the shares")]
    [InlineData("\"id\":\"K01\"", "\"id\":\"../K01\"", "all[0].id: not the id of a recording")]
    [InlineData("# a setup", "# another", "inputs[0].sha256: not that of the text")]
    [InlineData("summary", "some", "figures: not none, summary or all")]
    [InlineData("channelaudit-share/1", "channelaudit-share/9", "not a finished share")]
    public void WhatWasChangedIsRefusedWithItsPlace(string old, string changed, string fault)
    {
        string text = Encoding.UTF8.GetString(ShareJson.Render(Share));
        Assert.Contains(old, text, StringComparison.Ordinal);

        ChannelAuditException error = Assert.Throws<ChannelAuditException>(() => ShareJson.Read(Encoding.UTF8.GetBytes(text.Replace(old, changed, StringComparison.Ordinal)), "share.json"));

        Assert.Contains(fault, error.Message, StringComparison.Ordinal);
    }
}
