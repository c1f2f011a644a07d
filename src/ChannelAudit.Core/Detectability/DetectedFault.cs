using System.Collections.Immutable;

namespace ChannelAudit.Detectability;

/// <summary>How often a planted fault was found, size by size.</summary>
/// <param name="Name">The fault's name.</param>
/// <param name="Reason">The reason that an audit should give.</param>
/// <param name="Title">What it is, for people.</param>
/// <param name="Unit">What its size counts.</param>
/// <param name="Points">From the mildest to the worst; empty when it was not planted.</param>
/// <param name="NotAssessed">Why it was not planted, or null.</param>
public sealed record DetectedFault(string Name, string Reason, string Title, string Unit, ImmutableArray<DetectedPoint> Points, string? NotAssessed)
{
    /// <summary>The mildest size from which on at least a share is found at every size; null when not even the worst is.</summary>
    /// <param name="share">0 to 1.</param>
    public double? SizeFoundAt(double share)
    {
        double? size = null;
        foreach (DetectedPoint point in Points.Reverse())
        {
            if (point.FoundShare is not { } found || found < share)
            {
                break;
            }

            size = point.Size;
        }

        return size;
    }
}
