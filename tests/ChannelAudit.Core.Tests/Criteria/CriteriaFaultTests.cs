using ChannelAudit.Criteria;
using Xunit;

namespace ChannelAudit.Core.Tests.Criteria;

/// <summary>Every text about criteria that cannot be.</summary>
public sealed class CriteriaFaultTests
{
    private const string Higher = "the reject limit must be the higher one, or the same; a list left out keeps its default";

    [Theory]
    [InlineData("[line_noise]\n", "line 1: [line_noise] is no reason code with limits", "did you mean 'line-noise'?")]
    [InlineData(
        "[zebra]\n", "line 1: [zebra] is no reason code with limits",
        "tables: bridge, dropout, flatline, clipping, line-noise, narrow-band, low-frequency, pops, noise-floor, drift, weak-response, lead-swap, bad-trials")]
    [InlineData("\n\nclipping = 1\n", "line 3: clipping must be a table, not a number", "for example [clipping]")]
    [InlineData("[clipping]\nquestion = []\n", "line 2: unknown key 'question' in [clipping]", "did you mean 'questionable'?")]
    [InlineData("[clipping]\nreject = [{ cliped = 1 }]\n", "line 2: unknown measure 'cliped' in [clipping]", "did you mean 'clipped'?")]
    [InlineData(
        "[clipping]\nreject = [{ zebra = 1 }]\n", "line 2: unknown measure 'zebra' in [clipping]",
        "measures of [clipping]: clipped, clipped_run, peak_use, clipped_effect, clipped_shift")]
    [InlineData(
        "[clipping]\nreject = [\n  { flat = 1 },\n]\n", "line 3: measure 'flat' does not serve [clipping]",
        "measures of [clipping]: clipped, clipped_run, peak_use, clipped_effect, clipped_shift")]
    public void UnknownNamesAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("[bridge]\nchannel_reject = []\n", "line 2: channel_reject has no use in [bridge]", "[bridge] has questionable and reject")]
    [InlineData(
        "[bad-trials]\nreject = []\n", "line 2: reject has no use in [bad-trials]", "[bad-trials] has channel_questionable and channel_reject")]
    [InlineData(
        "[clipping]\nreject = { clipped = 1 }\n", "line 2: reject must be a list of tables",
        "for example reject = [{ clipped = 1.0 }], or [] to switch it off")]
    [InlineData(
        "[clipping]\nreject = [1]\n", "line 2: reject must be a list of tables", "for example reject = [{ clipped = 1.0 }], or [] to switch it off")]
    [InlineData(
        "[clipping]\nreject = [{}]\n", "line 2: reject has an empty alternative {}, which would always be reached",
        "write reject = [] to switch it off")]
    [InlineData(
        "[clipping]\nreject = [{ clipped = \"1\" }]\n", "line 2: the limit of clipped must be a number, not text", "for example { clipped = 1.0 }")]
    [InlineData("[clipping]\nsource = 1\n", "line 2: source must be text in quotes, not a number", "for example source = \"pilot study of our lab\"")]
    public void WrongShapesAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    [Theory]
    [InlineData("clipping", "clipped = nan", "clipped is above 0, up to 100")]
    [InlineData("clipping", "clipped = inf", "clipped is above 0, up to 100")]
    [InlineData("clipping", "clipped = -1", "clipped is above 0, up to 100")]
    [InlineData("clipping", "clipped = 0", "clipped is above 0, up to 100")]
    [InlineData("clipping", "clipped = 101", "clipped is above 0, up to 100")]
    [InlineData("clipping", "clipped_run = 0.0", "clipped_run is a finite number above 0")]
    [InlineData("line-noise", "line_ratio = nan", "line_ratio is any finite number")]
    [InlineData("line-noise", "line_rms = -5.0", "line_rms is a finite number above 0")]
    [InlineData("drift", "drift_slope = -600", "drift_slope is a finite number above 0")]
    [InlineData("drift", "headroom = -1", "headroom is from 0, up to 100")]
    [InlineData("bridge", "rho_rest = 1.5", "rho_rest is above 0, up to 1")]
    [InlineData("bridge", "rho_rest = -0.6", "rho_rest is above 0, up to 1")]
    [InlineData("bridge", "gain_active = 0", "gain_active is a finite number above 0")]
    public void LimitsThatAreAlwaysOrNeverReachedAreRefused(string reason, string limit, string range) => IsRefused(
        $"[{reason}]\nreject = [{{ {limit} }}]\n", $"line 2: {limit} makes no sense as a limit", $"a limit of {range}; [] switches a list off");

    [Theory]
    [InlineData(
        "[flatline]\nquestionable = [{ flat_run = 300 }]\nreject = [{ flat_run = 200 }]\n",
        "line 3: limits of flat_run in the wrong order: reject at 200, questionable at 300", Higher)]
    [InlineData(
        "[flatline]\nquestionable = [{ flat_run = 300 }]\n",
        "line 2: limits of flat_run in the wrong order: reject at 200, questionable at 300", Higher)]
    [InlineData(
        "[line-noise]\nreject = [{ line_rms = 5, line_ratio = -20 }]\n",
        "line 2: limits of line_ratio in the wrong order: reject at -20, questionable at -10", Higher)]
    [InlineData(
        "[clipping]\nchannel_questionable = [{ clipped = 2 }]\n",
        "line 2: limits of clipped in the wrong order: channel_reject at 1, questionable at 2", Higher)]
    [InlineData(
        "[drift]\nreject = [{ headroom = 60 }]\n",
        "line 2: limits of headroom in the wrong order: reject at 60, questionable at 50",
        "the reject limit must be the lower one, or the same; a list left out keeps its default")]
    public void LimitsInTheWrongOrderAreRefused(string toml, string found, string hint) => IsRefused(toml, found, hint);

    private static void IsRefused(string toml, string found, string hint) =>
        Faults.AreExactly($"lab.toml, {found}", hint, () => CriteriaFile.Parse(toml, "lab.toml"));
}
