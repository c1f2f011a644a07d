namespace ChannelAudit.Reports.Methods;

/// <summary>The sum and the ends of a number over many things.</summary>
public sealed class SpreadTally
{
    /// <summary>How many were added.</summary>
    public int Count { get; private set; }

    /// <summary>Their sum, in the order added.</summary>
    public double Sum { get; private set; }

    /// <summary>The smallest; 0 when there is none.</summary>
    public double Least { get; private set; }

    /// <summary>The largest; 0 when there is none.</summary>
    public double Most { get; private set; }

    /// <summary>Adds one.</summary>
    public void Add(double value)
    {
        Least = Count == 0 ? value : Math.Min(Least, value);
        Most = Count == 0 ? value : Math.Max(Most, value);
        Sum += value;
        Count++;
    }
}
