using System.Text;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;

namespace ChannelAudit.Reports.Tests.Json;

public sealed class AuditJsonTests
{
    [Fact]
    public void TheFileIsAsAgreed() => Golden.Match(
        "audit.json",
        Encoding.UTF8.GetString(SampleResults.Run().Json(new OutputFile("verdicts.tsv", new string('0', 64)))));

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(
        SampleResults.Run().Json(), CommaCulture.Run(() => SampleResults.Run().Json()));
}
