using ChannelAudit.Decisions;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>Decisions from a table: every column arrives where it belongs, and what is wrong is said with its line and what to do.</summary>
public sealed class DecisionTableTests : IDisposable
{
    private const string Header = "recording\tchannel\ttrial\tverdict\treason\tby\n";

    private readonly TemporaryFolder _place = new();

    public void Dispose() => _place.Dispose();

    [Fact]
    public void EveryColumnArrivesWhereItBelongs()
    {
        DecisionRequest[] read = [.. Read(Header + "K07\tcheek\t3\treject\tmains\tS. Econd\nn/a\tn/a\t4\tpass\tgood\tn/a\nK07\tbrow\tn/a\tquestionable\tnoise\t\n", "R. Viewer")];

        Assert.Equal(
            [
                new DecisionRequest("K07", "cheek", 3, Grade.Reject, "mains", "S. Econd") { Place = "d.tsv, line 2" },
                new DecisionRequest(null, null, 4, Grade.Pass, "good", "R. Viewer") { Place = "d.tsv, line 3" },
                new DecisionRequest("K07", "brow", null, Grade.Questionable, "noise", "R. Viewer") { Place = "d.tsv, line 4" },
            ],
            read);
    }

    [Theory]
    [InlineData("", "d.tsv: no decision in it | write one a row below the header")]
    [InlineData("K07\tcheek\t3\treject\tmains\t\n", "d.tsv, line 2: no by | say who decides in a column by, or with --by")]
    [InlineData("K07\tcheek\t3\treject\tn/a\tS. Econd\n", "d.tsv, line 2: no reason | write it into the column reason: who reads it later cannot ask")]
    [InlineData("K07\tcheek\t3\t\tmains\tS. Econd\n", "d.tsv, line 2: no verdict | write pass, questionable or reject into the column verdict")]
    [InlineData("K07\tcheek\t3\trejct\tmains\tS. Econd\n", "d.tsv, line 2: 'rejct' is no verdict | did you mean 'reject'?")]
    [InlineData("K07\tcheek\t3\tpas\tmains\tS. Econd\n", "d.tsv, line 2: 'pas' is no verdict | did you mean 'pass'?")]
    [InlineData("K07\tcheek\t3\tquestionabel\tmains\tS. Econd\n", "d.tsv, line 2: 'questionabel' is no verdict | did you mean 'questionable'?")]
    [InlineData("K07\tcheek\t3\tbad\tmains\tS. Econd\n", "d.tsv, line 2: 'bad' is no verdict | write pass, questionable or reject")]
    [InlineData("K07\tcheek\tthree\treject\tmains\tS. Econd\n", "d.tsv, line 2: 'three' is no number of a trial | write the number that verdicts.tsv has, or n/a for the channel itself")]
    [InlineData("K07\tcheek\t-3\treject\tmains\tS. Econd\n", "d.tsv, line 2: '-3' is no number of a trial | write the number that verdicts.tsv has, or n/a for the channel itself")]
    public void WhatIsWrongIsSaidWithItsLine(string rows, string expected)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read(Header + rows, null));

        Assert.Equal(expected, $"{fault.Message} | {fault.Hint}");
    }

    [Fact]
    public void WhatIsNoTableIsSaid()
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read(string.Empty, null));

        Assert.StartsWith("d.tsv: not a table of decisions", fault.Message, StringComparison.Ordinal);
        Assert.StartsWith("give a table with a header: recording, channel, trial, verdict, reason, and if need be by", fault.Hint, StringComparison.Ordinal);
    }

    private System.Collections.Immutable.ImmutableArray<DecisionRequest> Read(string text, string? by) => DecisionTable.Read(_place.Write("d.tsv", text), by);
}
