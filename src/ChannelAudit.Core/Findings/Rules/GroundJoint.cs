using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>What gel between a site and the ground electrode adds to the causes of mains and slow waves, where the setup says that it can get there.</summary>
/// <remarks>
/// An electrode joined to the ground sees the ground's spot too: the channel turns partly monopolar, and what both electrodes had in common (mains, heart,
/// eyes, distant muscles) no longer cancels. Bipolar samples cannot tell this from a poor contact; a reading to the ground can.
/// </remarks>
internal static class GroundJoint
{
    /// <summary>A cause with what the ground adds, if it lies beside the site.</summary>
    public static string AddTo(string cause, ChannelSurvey channel) => channel.Site is { IsBesideGround: true }
        ? cause + "; or gel has run from an electrode of this site to the ground: its reading to ground is then near 0 kΩ, and new gel there ends it"
        : cause;
}
