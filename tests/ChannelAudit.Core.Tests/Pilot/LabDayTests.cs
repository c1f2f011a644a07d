using ChannelAudit.Pilot;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>
/// An invented lab day. <c>fixtures/pilot/lab-day.tsv</c> says for each participant what is true and what must be done first; it was written and committed before the code that has
/// to find it. What comes first is common practice: wait before touching, plugs before electrodes, gel before skin.
/// </summary>
public sealed class LabDayTests
{
    private const int Days = 3;
    private const string None = "n/a";

    public static TheoryData<string, int> Participants()
    {
        TheoryData<string, int> data = [];
        foreach (string[] row in Rows())
        {
            for (int day = 0; day < Days; day++)
            {
                data.Add(row[0], day);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Participants))]
    public void EveryParticipantGetsTheRightFirstAction(string name, int day)
    {
        string[] row = Rows().Single(row => string.Equals(row[0], name, StringComparison.Ordinal));
        PilotReport report = LabDay.Of(name, 7_000 + (ulong)day).Run();

        string seen = FormattableString.Invariant($"{report.Answer}; {string.Join(" | ", report.Next.Select(step => $"{step.Kind} {string.Join('+', step.Sites)}: {step.Because}"))}; {string.Join(" / ", report.NotChecked)}");
        Assert.True(row[2].Split(" or ").Contains(Word(report.Answer), StringComparer.Ordinal), seen);
        Assert.True(string.Equals(row[3], report.Next.IsEmpty ? None : Word(report.Next[0].Kind), StringComparison.Ordinal), seen);
        if (!string.Equals(row[4], None, StringComparison.Ordinal))
        {
            Assert.Equal(row[4].Split(';').Order(StringComparer.Ordinal), report.Next[0].Sites.Order(StringComparer.Ordinal));
        }

        Assert.InRange(report.Next.Length, 0, 5);
        Assert.Null(report.MarksLateS);
    }

    private static IEnumerable<string[]> Rows() =>
        File.ReadAllLines(RepositoryRoot.Fixture("pilot/lab-day.tsv")).Skip(1).Select(line => line.Split('\t'));

    private static string Word(PilotAnswer answer) => answer switch
    {
        PilotAnswer.Start => "start",
        PilotAnswer.Doubtful => "doubtful",
        PilotAnswer.NotYet => "not yet",
        _ => "cannot say",
    };

    private static string Word(StepKind kind) => kind == StepKind.AskAgain ? "ask-again" : kind.ToString().ToLowerInvariant();
}
