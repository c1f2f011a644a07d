using Xunit;

namespace ChannelAudit.Core.Tests;

/// <summary>Checks both lines of a fault exactly.</summary>
internal static class Faults
{
    /// <summary>The action must end in a fault of the user's with exactly these two lines.</summary>
    public static void AreExactly(string message, string hint, Action action)
    {
        var fault = Assert.Throws<ChannelAuditException>(action);

        Assert.Equal(message, fault.Message);
        Assert.Equal(hint, fault.Hint);
        Assert.Equal(FaultKind.Usage, fault.Kind);
        Assert.DoesNotContain('\n', fault.Message + fault.Hint);
    }
}
