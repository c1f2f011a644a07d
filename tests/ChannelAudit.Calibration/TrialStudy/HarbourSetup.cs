using System.Globalization;
using System.Text;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>The study's <c>setup.toml</c>.</summary>
internal static class HarbourSetup
{
    /// <summary>The text, lines ended by LF.</summary>
    internal static string Text()
    {
        StringBuilder text = new("# Harbour pictures: an invented study, no person was recorded.\n\n");
        text.Append(SetupText.Of(new HarbourSession(1, 1).Plan)).Append("minimum = 24\n");
        text.Append("\n[protocol]\ntrials = { ");
        text.AppendJoin(", ", HarbourProtocol.Conditions.Select(condition => FormattableString.Invariant($"{condition} = {HarbourProtocol.EachCondition}")));
        text.Append(" }\nduration_s = [2.9, 3.1]\norder = \"any\"\ngap_s = [4.0, 5.2]\n");
        text.Append("\n[participants]\npath = \"{participant}/session*\"\n");
        foreach (IGrouping<string, HarbourSession> group in HarbourSession.All.GroupBy(session => session.Group, StringComparer.Ordinal))
        {
            IEnumerable<string> folders = group.Select(session => session.Code).Distinct(StringComparer.Ordinal).Select(code => $"\"{code}/*\"");
            text.Append(CultureInfo.InvariantCulture, $"\n[[recordings]]\nmatch = [{string.Join(", ", folders)}]\ngroup = \"{group.Key}\"\n");
        }

        text.Append("\n[[recordings]]\nmatch = \"P07/session1\"   # leads were exchanged, and it was noticed\n");
        text.Append("channels = { cheek = \"EMG brow\", brow = \"EMG cheek\" }\n");
        text.Append("\n[[recordings]]\nmatch = \"P19/*\"   # recorded elsewhere\nmains_hz = 60.0\namplifier = \"B\"\n");
        return text.ToString();
    }
}
