using ChannelAudit.Pilot;

namespace ChannelAudit.Reports.Figures;

/// <summary>Placeholder until the picture is there.</summary>
public static class PilotFigure
{
    /// <summary>Nothing yet.</summary>
    public static byte[] Render(PilotReport report) => throw new NotSupportedException(report.Recording.Id);
}
