using System.Text;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Tests.Json;

public sealed class AuditJsonTests
{
    [Fact]
    public void TheFileIsAsAgreed() => Golden.Match(
        "audit.json",
        Encoding.UTF8.GetString(AuditJson.Render(SampleResults.Run(), [new OutputFile("verdicts.tsv", new string('0', 64))])));

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(
        AuditJson.Render(SampleResults.Run(), []), CommaCulture.Run(() => AuditJson.Render(SampleResults.Run(), [])));
}
