using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>Tests that look at the whole process, or at time: they run when all others are done, one after another.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
