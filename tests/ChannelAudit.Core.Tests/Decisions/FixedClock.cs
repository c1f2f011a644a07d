namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>A clock that stands at noon of an invented day, with a fraction of a second.</summary>
internal sealed class FixedClock : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => new(2026, 3, 12, 12, 0, 0, 250, TimeSpan.Zero);
}
