namespace ChannelAudit.Review.Tests;

/// <summary>Tests that look at the whole process: they run when all others are done.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
