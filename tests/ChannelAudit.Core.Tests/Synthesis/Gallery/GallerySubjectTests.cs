using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis.Gallery;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Synthesis.Gallery;

/// <summary>The gallery: every reason with limits has an entry, and the audit says of each specimen what it was made to be.</summary>
public sealed class GallerySubjectTests
{
    private static readonly string[] Assessed =
        [.. DefaultCriteria.All.All.Select(criterion => criterion.Reason).Where(reason => ReasonCode.All.Contains(reason, StringComparer.Ordinal))];

    public static TheoryData<string> Codes => [.. GallerySubjects.All.Select(subject => subject.Code)];

    [Fact]
    public void EveryReasonWithLimitsHasOneEntryInTheOrderOfTheCodes() => Assert.Equal(
        ReasonCode.All.Where(code => Assessed.Contains(code, StringComparer.Ordinal)), GallerySubjects.All.Select(subject => subject.Code), StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Codes))]
    public void TheFaultIsFoundUnderItsNameAndWhatResemblesItIsNot(string code)
    {
        ImmutableArray<GalleryExhibit> exhibits = GalleryAudit.Of(Subject(code), CancellationToken.None);

        Assert.Contains(code, exhibits[0].Cell.Reasons, StringComparer.Ordinal);
        Assert.InRange(exhibits.Length, 2, 3);
        Assert.All(exhibits.Skip(1), exhibit => Assert.DoesNotContain(code, exhibit.Cell.Reasons, StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void WhatResemblesAFaultGetsItsOwnVerdict(string code) =>
        Assert.All(GalleryAudit.Of(Subject(code), CancellationToken.None).Skip(1), exhibit =>
        {
            if (exhibit.Specimen.Fault is { } fault && Assessed.Contains(fault, StringComparer.Ordinal))
            {
                Assert.Contains(fault, exhibit.Cell.Reasons, StringComparer.Ordinal);
            }
            else
            {
                Assert.Equal(Grade.Pass, exhibit.Cell.Verdict);
            }
        });

    [Theory]
    [MemberData(nameof(Codes))]
    public void EveryViewHasTheExcerptsItDraws(string code)
    {
        GallerySubject subject = Subject(code);
        int excerpts = subject.View switch { GalleryView.Baseline => 0, GalleryView.Spectrum => 1, _ => 2 };

        Assert.All(subject.Specimens, specimen => Assert.Equal(excerpts, specimen.Excerpts.Length));
        Assert.All(subject.Specimens, specimen => Assert.Equal(subject.View == GalleryView.Pair, specimen.Partner is not null));
        Assert.Equal(code, subject.Fault.Fault);
    }

    private static GallerySubject Subject(string code) => GallerySubjects.All.Single(subject => string.Equals(subject.Code, code, StringComparison.Ordinal));
}
