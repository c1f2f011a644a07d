using ChannelAudit.Runs;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Core.Tests.Runs;

public sealed class TextSamplesTests : IDisposable
{
    private static readonly string Ruled = string.Concat(Enumerable.Range(0, 25).Select(row => FormattableString.Invariant($"{row * 0.001};{row % 7},5;n/a\n")));

    private readonly TemporaryFolder _folder = new();

    public static TheoryData<string, bool> Files => new()
    {
        { string.Concat(Enumerable.Repeat("1.5\n", 25)), true },
        { "time,EMG cheek,EMG eye\ns,uV,uV\n" + string.Concat(Enumerable.Repeat("0.1,-2.5,3e1\n", 25)), true },
        { "sampled at 1000 Hz\n\nvolts\n" + Ruled, true },
        { string.Concat(Enumerable.Repeat("1.5\n", 19)), false },
        { "Prepared both sites anew, second try was fine.\nCable swapped at noon.\n", false },
        { "participant_id\tage\tgroup\n" + string.Concat(Enumerable.Range(1, 40).Select(row => FormattableString.Invariant($"P{row}\t{20 + row}\twaiting list\n"))), false },
        { "site\tpair\tkohm\n" + string.Concat(Enumerable.Repeat("cheek\ta-b\t4.1\n", 30)), false },
        { string.Empty, false },
        { new string('x', 200_000), false },
    };

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Files))]
    public void LinesOfNumbersAreSamplesAndNothingElseIs(string text, bool areSamples) => Assert.Equal(areSamples, TextSamples.Are(_folder.Write("x.txt", text)));
}
