using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using Xunit;

namespace ChannelAudit.Tests.Results;

public sealed class GradedMeasuresTests
{
    private static readonly ImmutableArray<GradedMeasure> Measures =
        [new(new MeasureValue("emg_rms", 6.5), null, null, null), new(new MeasureValue("flat", null, "no samples"), null, null, null)];

    [Fact]
    public void AMeasureIsFoundByItsName() => Assert.Equal(6.5, Measures.ValueOf("emg_rms"));

    [Theory]
    [InlineData("flat")]
    [InlineData("clipped")]
    [InlineData("EMG_RMS")]
    public void WithoutAValueThereIsNone(string name) => Assert.Null(Measures.ValueOf(name));
}
