using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

public sealed class ProtocolSetupTests
{
    [Fact]
    public void WithoutTheTableThereIsNoProtocol()
    {
        Assert.Null(SetupFile.Parse("[trials]\nfrom = \"events\"\n", "setup.toml").Protocol);
        Assert.Equal(new TriggerSetup(), SetupFile.Parse(string.Empty, "setup.toml").Trials.Trigger);
    }

    [Fact]
    public void EveryKeyIsRead()
    {
        ProtocolSetup protocol = SetupFile.Parse(
            "[protocol]\ntrials = { angry = 2, \"very happy\" = 2 }\nduration_s = { angry = [2.9, 3.1] }\norder = [\"angry\", \"very happy\"]\ngap_s = [0.5, 20]\n", "setup.toml").Protocol!;

        Assert.Equal([new("angry", 2), new("very happy", 2)], protocol.Trials.ToArray());
        Assert.Equal("angry,very happy,angry,very happy", string.Join(',', protocol.Sequence));
        Assert.Equal(new TimeRange(2.9m, 3.1m), protocol.DurationOf("angry"));
        Assert.Null(protocol.DurationOf("very happy"));
        Assert.Equal(new TimeRange(0.5m, 20m), protocol.GapS);
    }

    [Fact]
    public void AnOrderAloneIsTheWholeSession()
    {
        ProtocolSetup protocol = SetupFile.Parse("[protocol]\norder = [\"a\", \"b\", \"a\"]\nduration_s = [1, 2]\n", "setup.toml").Protocol!;

        Assert.Equal([new("a", 2), new("b", 1)], protocol.Trials.ToArray());
        Assert.Equal("a,b,a", string.Join(',', protocol.Sequence));
        Assert.Equal(new TimeRange(1, 2), protocol.DurationOf("b"));
    }

    [Fact]
    public void AsListedIsOneConditionAfterTheOther() =>
        Assert.Equal("b,b,a", string.Join(',', SetupFile.Parse("[protocol]\ntrials = { b = 2, a = 1 }\norder = \"as-listed\"\n", "setup.toml").Protocol!.Sequence));

    [Fact]
    public void TriggersAreReadAsTheyStand()
    {
        TriggerSetup trigger = SetupFile.Parse(
            "[trials]\nfrom = \"trigger\"\ntrigger_channel = \"AUX\"\ntrigger_edge = \"held\"\ntrigger_mask = 0x0F\ntrigger_codes = { 1 = \"rest\", 12 = \"angry\" }\ntrigger_least_ms = 50\n", "setup.toml").Trials.Trigger;

        Assert.Equal(("AUX", TriggerEdge.Held, 15, 50m), (trigger.Channel, trigger.Edge, trigger.Mask, trigger.LeastMs));
        Assert.Equal("1 rest, 12 angry", string.Join(", ", trigger.Codes.Select(code => FormattableString.Invariant($"{code.Key} {code.Value}"))));
    }

    [Theory]
    [InlineData("[protocol]\ntrial = {}\n", "line 2: unknown key 'trial' in [protocol]", "did you mean 'trials'?")]
    [InlineData("gap_s = [1, 2]\n", "line 1: 'gap_s' stands outside of its table", "put it below a line [protocol]")]
    [InlineData("[protocol]\ntrials = 10\n", "line 2: trials must be a table, not a number", "for example trials = { angry = 10, happy = 10 }")]
    [InlineData("[protocol]\ntrials = { a = 1.5 }\n", "line 2: trials must be a whole number, not a number", "for example trials = { angry = 10, happy = 10 }")]
    [InlineData("[protocol]\ntrials = { a = 0 }\n", "line 2: trials = 0 is out of range", "trials goes from 1 to 100000")]
    [InlineData("[protocol.trials]\na = 99999\nb = 99999\n", "line 1: more than 100000 trials in all", "give the numbers of one session")]
    [InlineData("[protocol]\nduration_s = [3]\n", "line 2: duration_s needs two numbers, 1 given", "write duration_s = [least, greatest] in s")]
    [InlineData("[protocol]\nduration_s = 3\n", "line 2: duration_s must be a list of numbers, not a number", "for example duration_s = [2.9, 3.1]")]
    [InlineData("[protocol]\ngap_s = [3, 2.5]\n", "line 2: gap_s = [3, 2.5] has the greater number first", "write gap_s = [least, greatest] in s")]
    [InlineData("[protocol]\ntrials = { angry = 2 }\nduration_s = { angy = [1, 2] }\n", "line 3: duration_s names 'angy', which is not among the trials of the protocol", "did you mean 'angry'?")]
    [InlineData("[protocol]\ntrials = { angry = 2 }\norder = [\"sad\"]\n", "line 3: order names 'sad', which is not among the trials of the protocol", "labels there: angry")]
    [InlineData(
        "[protocol]\ntrials = { a = 3, b = 2 }\norder = [\"a\", \"b\"]\n", "line 3: the order, repeated, does not give 3 trials of 'a'",
        "list the labels of one round, or of the whole session, so that the numbers under trials come out")]
    [InlineData("[protocol]\norder = \"random\"\n", "line 2: order = \"random\" is not known", "order is one of: any, as-listed")]
    [InlineData("[protocol]\norder = \"as-listed\"\n", "line 2: order = \"as-listed\", but no trials are listed", "list them, as in trials = { angry = 10, happy = 10 }")]
    [InlineData("[protocol]\norder = []\n", "line 2: order is an empty list", "list the labels in order, or write order = \"any\"")]
    [InlineData("[trials]\ntrigger_mask = 1\n", "line 2: trigger_mask is given, but trials do not come from a trigger channel", "write from = \"trigger\" too, or take it out")]
    [InlineData("[trials]\nfrom = \"trigger\"\ntrigger_mask = 0\n", "line 3: trigger_mask = 0 is out of range", "trigger_mask goes from 1 to 2147483647")]
    [InlineData("[trials]\nfrom = \"trigger\"\ntrigger_edge = \"up\"\n", "line 3: trigger_edge = \"up\" is not known", "trigger_edge is one of: rising, falling, both, held")]
    [InlineData(
        "[trials]\nfrom = \"trigger\"\ntrigger_codes = { rest = \"1\" }\n", "line 3: trigger_codes: 'rest' is no whole number",
        "write each code in decimal digits and its label, as in trigger_codes = { 1 = \"rest\", 2 = \"angry\" }")]
    [InlineData("[trials]\nfrom = \"trigger\"\ntrigger_codes = { 1 = \"a\", 01 = \"b\" }\n", "line 3: trigger_codes: code 1 is given twice", "give each code one label")]
    public void WhatCannotBeIsRefused(string toml, string found, string hint)
    {
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => SetupFile.Parse(toml, "setup.toml"));

        Assert.Equal($"setup.toml, {found} | {hint}", $"{fault.Message} | {fault.Hint}");
        Assert.Equal(FaultKind.Usage, fault.Kind);
    }
}
