namespace ChannelAudit.Pilot;

/// <summary>What light taps on lead wires say about two sites.</summary>
public enum TapVerdict
{
    /// <summary>Taps on one site's wires show in the other as well: gel joins them.</summary>
    Joined,

    /// <summary>Taps stay where they are made: nothing joins the two.</summary>
    Apart,

    /// <summary>Neither can be said.</summary>
    Open,
}
