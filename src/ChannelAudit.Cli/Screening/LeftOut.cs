using System.Collections.Immutable;
using ChannelAudit.Text;
using Serilog;

namespace ChannelAudit.Cli.Screening;

/// <summary>Says what an audit held before that a new run over it leaves out.</summary>
internal static class LeftOut
{
    /// <summary>Says it, if there is anything.</summary>
    /// <param name="log">Where to.</param>
    /// <param name="folder">The audit's folder as the user gave it.</param>
    /// <param name="dropped">Recordings of the earlier run that are not in this one.</param>
    /// <param name="outdated">Recordings whose study of planted faults is of other inputs.</param>
    public static void Say(ILogger log, string folder, ImmutableArray<string> dropped, ImmutableArray<string> outdated)
    {
        if (!dropped.IsEmpty)
        {
            log.Warning("the audit that stood in {Folder:l} was also over {Recordings:l}: not in this run, so no longer in it", folder, OneLine.List(dropped));
        }

        if (!outdated.IsEmpty)
        {
            log.Warning("what detectability found in {Recordings:l} is of other inputs: it was taken away; run it again", OneLine.List(outdated));
        }
    }
}
