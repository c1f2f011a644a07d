using System.Globalization;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests;

/// <summary>What an invented study gives at its largest.</summary>
internal static class LargeSamples
{
    private static readonly string[] Sites = ["cheek", "brow", "eye", "chin"];
    private static readonly string[] Codes = [ReasonCode.LineNoise, ReasonCode.LowFrequency, ReasonCode.Pops];

    /// <summary>Four channels of which every trial is rejected for three reasons: no page has more evidence to show.</summary>
    public static RecordingResult Bad(int trials)
    {
        RecordingResult large = SampleResults.Large(trials);
        return large with
        {
            Id = "bad",
            Channels =
            [
                .. large.Channels.Select(channel => channel with
                {
                    Verdict = Grade.Reject,
                    Reasons = [.. Codes],
                    Cells = [.. channel.Cells.Select(cell => BadCell(channel, cell))],
                }),
            ],
        };
    }

    /// <summary>A run over many recordings of four channels with 360 trials, half of which do not pass.</summary>
    public static RunDigest Study(int recordings) => new()
    {
        Recordings = [.. Enumerable.Range(1, recordings).Select(Recording)],
        Detailed = [],
        Codes = [.. Codes],
    };

    private static CellResult BadCell(ChannelResult channel, CellResult cell) => cell with
    {
        Verdict = Grade.Reject,
        Reasons = [.. Codes],
        Findings = [.. Codes.Select(code => BadFinding(code, channel.Name, cell.Trial))],
    };

    private static Finding BadFinding(string code, string channel, int trial)
    {
        Evidence[] evidence = [new Evidence("line_rms", 10 + (trial * 0.1), "uV", 5), new Evidence("line_ratio", 6.25, "dB", 0)];
        return SampleResults.Finding(
            code, Grade.Reject, [channel], trial, 10 * trial, (10 * trial) + 3, evidence,
            "what was picked up is stronger than the muscle", "a loose ground or a lead near a mains cable") with
        {
            Effect = new ScoreEffect(1.8, 58, 3.1),
        };
    }

    private static RecordingDigest Recording(int number)
    {
        string id = string.Create(CultureInfo.InvariantCulture, $"group{number % 4}+participant{number:0000}+session1");
        return new RecordingDigest
        {
            Id = id,
            Path = id.Replace('+', '/') + ".edf",
            Sha256 = new string('a', 64),
            Stamp = RecordingStamp.None,
            Format = "EDF+C",
            DurationS = 3600,
            Participant = string.Create(CultureInfo.InvariantCulture, $"participant{number:0000}"),
            Group = number % 2 == 0 ? "garden" : "harbour",
            Channels = [.. Sites.Select((site, place) => Channel(site, number + place))],
            TooFew = [.. Sites.Select(site => new ConditionCount(site, number % 2 == 0 ? "happy" : "angry", 3, 2, 40, 5, 8))],
        };
    }

    private static ChannelDigest Channel(string site, int seed)
    {
        Grade verdict = (Grade)(seed % 3);
        return new ChannelDigest(site, verdict, verdict == Grade.Pass ? [] : [Codes[seed % 2]], new VerdictCounts(180, 90, 90))
        {
            ByReason = [.. Codes.Select((code, place) => new ReasonTrials(code, 60 + place))],
        };
    }
}
