using ChannelAudit.Pilot;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

public sealed class ParticipantTests
{
    [Theory]
    [InlineData("P07", "P07")]
    [InlineData("P07-2", "P07")]
    [InlineData("P07_again", "P07")]
    [InlineData("P071", "P071")]
    [InlineData("sub-07_task-pilot_emg", "sub-07")]
    [InlineData("sub-", "sub-")]
    [InlineData("_P07", "_P07")]
    public void TheNameOfTheRecordingTellsWhoseItIs(string id, string expected) => Assert.Equal(expected, PilotParticipant.Of(id));
}
