using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Demo;

/// <summary>Impedances of all electrodes at one moment, in kΩ: first and second electrode of each site.</summary>
/// <param name="Cheek">The cheek's.</param>
/// <param name="Brow">The brow's.</param>
/// <param name="Eye">The eye's.</param>
/// <param name="Ground">The forehead's.</param>
public sealed record DemoContacts(
    (double First, double Second) Cheek, (double First, double Second) Brow, (double First, double Second) Eye, double Ground)
{
    /// <summary>The three sites with these contacts.</summary>
    public ImmutableArray<SitePlan> Sites =>
    [
        .. SitePlan.Face.Zip(
            [Cheek, Brow, Eye], (site, kohm) => site with { FirstKohm = kohm.First, SecondKohm = kohm.Second }),
    ];
}
