using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Decisions;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>Ledgers of an invented study.</summary>
internal static class LedgerSamples
{
    public static readonly string RecordingSha256 = new('a', 64);

    public static Decision Draft(string channel = "cheek", int? trial = null, Grade verdict = Grade.Pass, string reason = "looked at the trace", string by = "R. Viewer") => new()
    {
        By = by,
        Action = DecisionAction.Decide,
        Recording = "K07",
        Channel = channel,
        Trial = trial is { } number ? new DecidedTrial(number, number * 1.50m, 2m, "smile") : null,
        Verdict = verdict,
        Reason = reason,
        Computed = [new ComputedVerdict(channel, Grade.Reject, ["line-noise"])],
        RecordingSha256 = RecordingSha256,
        CriteriaSha256 = new string('c', 64),
        Origin = "decide",
    };

    public static ImmutableArray<Decision> Add(string folder, params Decision[] drafts) =>
        LedgerWriter.Append(folder, _ => drafts, new FixedClock(), CancellationToken.None);

    public static Decision Withdraw(string folder, int number) =>
        LedgerWriter.Withdraw(folder, number, "R. Viewer", "a slip", "decide", new FixedClock(), CancellationToken.None);

    public static string PathIn(string folder) => Path.Combine(folder, Ledger.FileName);

    public static string[] LinesIn(string folder) => File.ReadAllText(PathIn(folder)).Split('\n')[..^1];

    public static void Rewrite(string folder, params string[] lines) =>
        File.WriteAllBytes(PathIn(folder), Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n"))));

    public static ChannelAuditException FaultOf(string folder) => Xunit.Assert.Throws<ChannelAuditException>(() => Ledger.Read(folder));
}
