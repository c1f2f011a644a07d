using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>Holds a setup against a recording.</summary>
public static class SetupCheck
{
    /// <summary>Refuses a setup whose sites do not fit the recording's channels.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="labels">Labels as they stand in the recording, in file order, repeats included.</param>
    /// <param name="recordingFile">The recording's name, for messages.</param>
    /// <exception cref="ChannelAuditException">
    /// When a site's channel is not there, is ambiguous or is another site's, or when a site is named as a channel that is not its own,
    /// so that a table would have two rows of one name.
    /// </exception>
    public static void Against(StudySetup setup, IEnumerable<string> labels, string recordingFile)
    {
        ImmutableArray<string> all = [.. labels];
        ImmutableArray<int> positions = SiteChannels.Locate(setup, all, recordingFile);
        foreach (SiteSetup site in setup.Sites)
        {
            for (int index = 0; index < all.Length; index++)
            {
                if (!positions.Contains(index) && string.Equals(all[index], site.Name, StringComparison.Ordinal))
                {
                    throw SetupErrors.NameIsAnotherLabel(setup, site, recordingFile);
                }
            }
        }
    }
}
