using ChannelAudit.Criteria;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.TestKit;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Makes a session, writes it as a file and audits it with what pictures need.</summary>
internal static class MadeSession
{
    /// <summary>The result.</summary>
    public static RecordingResult Audited(SessionPlan plan, bool withSetup)
    {
        using TemporaryFolder folder = new();
        string path = folder.In("session.edf");
        EdfFiles.Write(MadeRecording.Make(plan), path);
        StudySetup setup = withSetup ? SetupFile.Parse(SetupText.Of(plan), "setup.toml") : StudySetup.Empty;
        return RecordingAudit.Of(
            new RecordingEntry("session", path, "session.edf"), setup, DefaultCriteria.All, null, CancellationToken.None, withViews: true);
    }
}
