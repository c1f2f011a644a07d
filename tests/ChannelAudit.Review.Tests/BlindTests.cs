using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using ChannelAudit.Decisions;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Raters;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>What a blind person must not learn from any answer.</summary>
public sealed class BlindTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task NoAnswerHoldsConditionRecordingVerdictFindingOrOtherPeoplesDecisions()
    {
        await using (ReviewClient other = await ReviewClient.Start(_folder.By("R.Viewer")))
        {
            await other.Decide(1, "questionable", "secretword");
        }

        await using ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd"));
        int count = (int)(await client.Get("/state"))["count"]!;
        List<string> paths = ["/state"];
        for (int n = 1; n <= count; n++)
        {
            paths.AddRange([FormattableString.Invariant($"/cell?n={n}"), FormattableString.Invariant($"/ribbon?n={n}"), FormattableString.Invariant($"/sheet?n={n}")]);
        }

        paths.AddRange(["/picture?n=1&from=-1&to=4", "/picture?n=0&from=-1&to=4", "/cell?n=0", "/nothing"]);
        string[] hidden =
        [
            ReviewFolder.Condition, "onerror", "grimsby", "P01", "P02", "R.Viewer", "secretword", "questionable", "reject", "drift", "mains", "line-noise", "line_rms", "trial ",
        ];
        foreach (string path in paths)
        {
            using HttpResponseMessage answer = await client.Http.GetAsync(path);
            string text = Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync());
            string heads = answer.Headers.ToString() + answer.Content.Headers;
            Assert.All(hidden, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
            Assert.All(hidden, word => Assert.DoesNotContain(word, heads, StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public async Task AFaultDoesNotSayWhichRecordingItIs()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd"));
        File.Delete(Path.Combine(_folder.Data, ReviewFolder.Paths[0]));
        File.Delete(Path.Combine(_folder.Data, ReviewFolder.Paths[1]));

        (HttpStatusCode status, string text) = await client.Send(HttpMethod.Get, "/picture?n=1&from=-1&to=4");
        (HttpStatusCode decided, JsonNode body) = await client.Decide(1, "pass", "x");

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (status, decided));
        Assert.DoesNotContain("P0", text + body, StringComparison.Ordinal);
        Assert.DoesNotContain("grimsby", text + body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TimesCountFromTheWindowSoThatTheOrderOfTheSessionIsHidden()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd"));

        for (int n = 1; n <= 20; n++)
        {
            JsonNode cell = await client.Get(FormattableString.Invariant($"/cell?n={n}"));
            Assert.Equal((0, 3), ((double)cell["windowFromS"]!, (double)cell["windowToS"]!));
            Assert.Equal((-10, 13), ((double)cell["leastS"]!, (double)cell["mostS"]!));
            Assert.Null(cell["earlier"]);
        }
    }

    [Fact]
    public async Task TheOrderFollowsFromTheSeedWhichEveryDecisionRecords()
    {
        async Task<string> Order(uint seed)
        {
            await using ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd", seed));
            StringBuilder order = new();
            for (int n = 1; n <= 54; n++)
            {
                order.Append((string)(await client.Get(FormattableString.Invariant($"/cell?n={n}")))["channel"]!).Append(' ');
            }

            return order.ToString();
        }

        string seven = await Order(7);
        Assert.Equal(seven, await Order(7));
        Assert.NotEqual(seven, await Order(8), StringComparer.Ordinal);

        await using (ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd", 7)))
        {
            Assert.Equal(HttpStatusCode.OK, (await client.Decide(3, "reject", "noisy")).Status);
        }

        Decision line = Ledger.Read(_folder.Audit).Lines.Single();
        Assert.Equal(("review:seed=7", true), (line.Origin, line.Blind));

        // Started again without a seed, it goes on in the same order.
        await using ReviewClient again = await ReviewClient.Start(_folder.BlindBy("S.Econd", seed: null));
        Assert.True((bool)(await again.Get("/cell?n=3"))["isDecided"]!);
        Assert.Equal(53, (int)(await again.Get("/state"))["leftCount"]!);
    }

    [Fact]
    public async Task RatersReadWhatWasDecidedBlindWhateverOthersDecidedLater()
    {
        await using (ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd")))
        {
            await client.Decide(1, "reject", "noisy");
            await client.Decide(2, "pass", "quiet");
            await client.Post("/withdraw", new { number = 2 });
        }

        await using (ReviewClient other = await ReviewClient.Start(_folder.By("R.Viewer")))
        {
            for (int n = 1; n <= 54; n++)
            {
                await other.Decide(n, "pass", "all of it");
            }
        }

        StoredAudit audit = StoredAudit.Open(_folder.Audit);
        GivenLabel label = BlindDecisions.Of(audit).Labels.Single();

        Assert.Equal(("S.Econd", Grade.Reject, 1), (label.Rater, label.Grade, label.Place.Line));
        Assert.False(RaterStudy.Of(audit, [label], CancellationToken.None).Sets.IsEmpty);
    }

    [Fact]
    public async Task OtherPeoplesDecisionsAreNeitherShownNorCountedNorAConflict()
    {
        await using ReviewClient blind = await ReviewClient.Start(_folder.BlindBy("S.Econd"));
        int seen = (int)(await blind.Get("/cell?n=1"))["seen"]!;
        await using (ReviewClient other = await ReviewClient.Start(_folder.By("R.Viewer")))
        {
            for (int n = 1; n <= 54; n++)
            {
                await other.Decide(n, "reject", "all of it");
            }
        }

        JsonNode state = await blind.Get("/state");
        (HttpStatusCode status, _) = await blind.Decide(1, "pass", "quiet", seen);
        JsonNode cell = await blind.Get("/cell?n=1");

        Assert.Equal(54, (int)state["leftCount"]!);
        Assert.Empty(state["reasons"]!.AsArray());
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal("quiet", (string)cell["decisions"]!.AsArray().Single()!["reason"]!);
    }

    [Fact]
    public async Task CellsThatThePersonHasDecidedWithEverythingInViewAreLeftOut()
    {
        await using (ReviewClient open = await ReviewClient.Start(_folder.By("S.Econd")))
        {
            await open.Decide(1, "pass", "one");
            await open.Decide(2, "pass", "two");
            await open.Post("/withdraw", new { number = 2 });
        }

        ReviewBook own = ReviewBook.Open(_folder.BlindBy("S.Econd"), CancellationToken.None);
        ReviewBook other = ReviewBook.Open(_folder.BlindBy("T.Hird"), CancellationToken.None);

        Assert.Equal((52, 2), (own.Cells.Length, own.LeftOut));
        Assert.Equal((54, 0), (other.Cells.Length, other.LeftOut));
        Assert.Equal(own.Cells, other.Cells.Where(own.Cells.Contains));
    }

    [Fact]
    public async Task WhatWasJudgedBlindBeforeStaysInTheList()
    {
        int place;
        await using (ReviewClient blind = await ReviewClient.Start(_folder.BlindBy("S.Econd")))
        {
            await blind.Decide(1, "reject", "noisy");
        }

        Decision line = Ledger.Read(_folder.Audit).Lines.Single();
        await using (ReviewClient open = await ReviewClient.Start(_folder.By("S.Econd")))
        {
            place = ReviewBook.Open(_folder.By("S.Econd"), CancellationToken.None).NumberOf(line);
            Assert.Equal(HttpStatusCode.OK, (await open.Decide(place, "pass", "quiet after all")).Status);
        }

        Assert.Equal(0, ReviewBook.Open(_folder.BlindBy("S.Econd"), CancellationToken.None).LeftOut);
    }

    [Fact]
    public async Task WhoHasSeenEverythingCannotJudgeBlind()
    {
        await using (ReviewClient open = await ReviewClient.Start(_folder.By("S.Econd")))
        {
            for (int n = 1; n <= 54; n++)
            {
                await open.Decide(n, "pass", "all of it");
            }
        }

        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => ReviewBook.Open(_folder.BlindBy("S.Econd"), CancellationToken.None));

        Assert.StartsWith("nothing is left to judge blind: S.Econd has decided 54 cells", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheScopeStandsInTheOriginAndIsGoneOnWith()
    {
        int count;
        await using (ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd", 42) with { Scope = ReviewScope.Questionable }))
        {
            count = (int)(await client.Get("/state"))["count"]!;
            await client.Decide(1, "pass", "quiet");
        }

        Assert.Equal("review:seed=42:cells=questionable", Ledger.Read(_folder.Audit).Lines.Single().Origin);

        ReviewBook again = ReviewBook.Open(_folder.BlindBy("S.Econd", seed: null), CancellationToken.None);
        ReviewBook anew = ReviewBook.Open(_folder.BlindBy("S.Econd", 42), CancellationToken.None);

        Assert.InRange(count, 1, 53);
        Assert.Equal((count, 42u, 1), (again.Cells.Length, again.Seed!.Value, ReviewState.Of(again).Count - ReviewState.Of(again).LeftCount));
        Assert.Equal(54, anew.Cells.Length);
    }

    [Theory]
    [InlineData("channel", 0)]
    [InlineData("alike", 0)]
    public async Task NothingButOneTrialIsDecidedBlind(string reach, int others)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.BlindBy("S.Econd"));

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "reject", "noisy", reach, others);
        JsonNode cell = await client.Get("/cell?n=1");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("one trial at a time", (string)body["error"]!, StringComparison.Ordinal);
        Assert.Null(cell["whole"]);
        Assert.Equal(0, (int)cell["alike"]!);
        Assert.Empty(Ledger.Read(_folder.Audit).Lines);
    }
}
