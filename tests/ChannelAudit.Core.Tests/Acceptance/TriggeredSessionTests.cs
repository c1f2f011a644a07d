using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Recordings;
using ChannelAudit.Recordings.Edf;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>A made EDF file whose trials are only on its trigger channel: codes in the low byte, a light that blinks in bit 8.</summary>
public sealed class TriggeredSessionTests
{
    private const int Rate = 1000;
    private const int Light = 0x100;
    private const string Codes = "[trials]\nfrom = \"trigger\"\ntrigger_channel = \"AUX 1\"\ntrigger_edge = \"held\"\ntrigger_mask = 0xFF\n"
        + "trigger_codes = { 1 = \"rest\", 2 = \"raise lip corner\", 3 = \"draw brows together\", 4 = \"close eyes firmly\", 10 = \"harbour\", 11 = \"meadow\" }\n"
        + "trigger_least_ms = 50\nrest = [\"rest\"]\n[protocol]\ntrials = { harbour = 4, meadow = 4 }\nduration_s = [2.9, 3.1]\norder = [\"harbour\", \"meadow\"]\ngap_s = [4, 8]\n";

    private static readonly ImmutableArray<string> Labels = ["", "rest", "raise lip corner", "draw brows together", "close eyes firmly", "", "", "", "", "", "harbour", "meadow"];

    [Fact]
    public void ATriggeredSessionThatFollowsItsProtocolSaysNothing()
    {
        RecordingResult result = Audited(_ => { });

        Assert.Equal("trigger", result.TrialsFrom);
        Assert.Equal(13, result.Trials.Length);
        Assert.Equal("rest", result.Trials[0].Label);
        Assert.Equal((2m, 14m), (result.Trials[0].OnsetS, result.Trials[0].DurationS));
        Assert.Equal(["cheek", "brow", "eye"], result.Channels.Select(channel => channel.Name), StringComparer.Ordinal);
        Assert.DoesNotContain(result.Information, one => string.Equals(one.Reason, "events", StringComparison.Ordinal));
        Assert.Empty(result.Warnings);
    }

    [Fact]
    public void AMissingADoubleAndAMisplacedTriggerAreNamed()
    {
        SessionPlan plan = Plan();
        int third = At(plan, 6);
        int fifth = At(plan, 8);
        int seventh = At(plan, 10);
        RecordingResult result = Audited(trigger =>
        {
            // The third scored trial is never sent, the fifth bounces after 10 ms, the seventh ends after a second.
            trigger.AsSpan(third, 3 * Rate).Clear();
            trigger.AsSpan(fifth + 10, 10).Clear();
            trigger.AsSpan(seventh + Rate, 2 * Rate).Clear();
        });

        string[] said = [.. result.Information.Where(one => string.Equals(one.Reason, "events", StringComparison.Ordinal)).Select(one => one.Text)];

        Assert.Equal(3, said.Length);
        Assert.Matches("^missing: 1 of 4 'harbour', after trial 6 'meadow' at [0-9.]+ s; the place may be the pause before trial 7 'meadow'", said[0]);
        Assert.Matches("^double: a trigger 'harbour' at [0-9.]+ s, 20 ms after trial 8 'harbour'", said[1]);
        Assert.Matches("^misplaced: trial 10 'harbour' at [0-9.]+ s lasts 1.0 s, not 2.9 s to 3.1 s$", said[2]);
        Assert.All(result.Channels, channel => Assert.Equal(Grade.Pass, channel.Verdict));
    }

    [Fact]
    public void AChannelThatIsNotThereIsRefusedWithTheNearest()
    {
        using TemporaryFolder folder = new();
        string path = folder.In("session.edf");
        Write(path, Plan(), _ => { });

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => RecordingAudit.Of(
            new RecordingEntry("session", path, "session.edf"), SetupFile.Parse("[trials]\nfrom = \"trigger\"\ntrigger_channel = \"AUX\"\n", "setup.toml"), DefaultCriteria.All, null, CancellationToken.None));

        Assert.Equal("setup.toml, [trials] trigger_channel: channel 'AUX' is not in session.edf, or holds nothing", fault.Message);
        Assert.StartsWith("did you mean 'AUX 1'?", fault.Hint, StringComparison.Ordinal);
    }

    private static SessionPlan Plan() => MadeAudit.Session(4711, new Rational(Rate, 1));

    private static int At(SessionPlan plan, int trial) => (int)(plan.Trials[trial].OnsetS * Rate);

    private static RecordingResult Audited(Action<double[]> spoil)
    {
        using TemporaryFolder folder = new();
        string path = folder.In("session.edf");
        SessionPlan plan = Plan();
        Write(path, plan, spoil);
        string sites = SetupText.Of(plan);
        string setup = sites[..sites.IndexOf("[trials]", StringComparison.Ordinal)] + Codes;
        return RecordingAudit.Of(new RecordingEntry("session", path, "session.edf"), SetupFile.Parse(setup, "setup.toml"), DefaultCriteria.All, null, CancellationToken.None);
    }

    private static void Write(string path, SessionPlan plan, Action<double[]> spoil)
    {
        using Recording made = MadeRecording.Make(plan).Open();
        int records = (int)(made.Channels[0].StoredLength / Rate);
        double[] trigger = new double[records * Rate];
        foreach (PlannedTrial trial in plan.Trials)
        {
            trigger.AsSpan((int)(trial.OnsetS * Rate), (int)(trial.DurationS * Rate)).Fill(Labels.IndexOf(trial.Label));
        }

        spoil(trigger);
        for (int i = 0; i < trigger.Length; i++)
        {
            trigger[i] += i / 700 % 2 * Light;
        }

        EdfWriter.Write(path, new EdfContent(
            [
                .. made.Channels.Select(channel => EdfFiles.Signal(channel, 1, (first, destination) => made.Samples.Read(channel.Index, first, destination))),
                new EdfSignalContent("AUX 1", -32768, 32767, Rate, EdfSignalContent.From(trigger)) { Unit = "" },
            ],
            records));
    }
}
