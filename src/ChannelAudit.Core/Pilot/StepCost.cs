namespace ChannelAudit.Pilot;

/// <summary>What a step costs the participant.</summary>
/// <remarks>Minutes are rough figures of our own for one site, for ordering only; common practice differs from lab to lab.</remarks>
public static class StepCost
{
    /// <summary>Minutes in the chair.</summary>
    public static double MinutesOf(StepKind kind) => kind switch
    {
        StepKind.Record or StepKind.Range or StepKind.Exchange or StepKind.Ground or StepKind.Still
            or StepKind.AskAgain or StepKind.Leads or StepKind.Fasten or StepKind.Settle or StepKind.Measure => 1,
        StepKind.Room or StepKind.Input or StepKind.Storage => 2,
        StepKind.Wipe => 3,
        StepKind.Renew => 4,
        StepKind.Wait => 5,
        StepKind.Prepare => 6,
        _ => 0,
    };

    /// <summary>How near it comes to the face: 0 not at all, 1 leads, 2 gel and electrodes, 3 skin; leaving a site alone comes last.</summary>
    public static int TouchOf(StepKind kind) => kind switch
    {
        StepKind.Leads or StepKind.Fasten or StepKind.Settle or StepKind.Measure => 1,
        StepKind.Wipe or StepKind.Renew => 2,
        StepKind.Prepare => 3,
        StepKind.Leave => 4,
        _ => 0,
    };

    /// <summary>Whether the caution about skin and eyes belongs beside it.</summary>
    public static bool TouchesSkin(StepKind kind) => TouchOf(kind) is 2 or 3;
}
