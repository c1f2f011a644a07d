namespace ChannelAudit.Pilot;

/// <summary>What a technician can do, from what touches nobody to what touches skin; that is also the order in which steps are proposed.</summary>
public enum StepKind
{
    /// <summary>Record what is missing: rest, or a movement that was never asked for.</summary>
    Record,

    /// <summary>Check gain or input range of the amplifier.</summary>
    Range,

    /// <summary>Record the raw signal; check unit, resolution and setup.</summary>
    Input,

    /// <summary>Check the way from the amplifier to the disk.</summary>
    Storage,

    /// <summary>Put the leads of two sites into each other's inputs.</summary>
    Exchange,

    /// <summary>Check the lead and plug of the ground.</summary>
    Ground,

    /// <summary>Move what radiates mains or another tone.</summary>
    Room,

    /// <summary>Ask for a still face, and record again.</summary>
    Still,

    /// <summary>Show the movement and record the task again.</summary>
    AskAgain,

    /// <summary>Measure the contacts again: the readings do not fit together.</summary>
    Measure,

    /// <summary>Wait, then measure again.</summary>
    Wait,

    /// <summary>Check lead and plug of a site at the amplifier's end.</summary>
    Leads,

    /// <summary>Fasten the leads so that they cannot pull.</summary>
    Fasten,

    /// <summary>Settle a suspected bridge by light taps on the lead wires, or a reading across.</summary>
    Settle,

    /// <summary>Wipe off gel between two sites, or between the two electrodes of one.</summary>
    Wipe,

    /// <summary>Renew the gel and attach the electrodes anew.</summary>
    Renew,

    /// <summary>Prepare the site anew.</summary>
    Prepare,

    /// <summary>Leave a site near the eye as it is: the gain is doubtful, the skin is not.</summary>
    Leave,
}
