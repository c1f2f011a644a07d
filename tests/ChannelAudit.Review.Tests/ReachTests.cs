using System.Net;
using System.Text.Json.Nodes;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>Decisions that reach farther than one trial: a channel as a whole, and trials that are alike.</summary>
public sealed class ReachTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task AChannelIsDecidedAsAWholeAndTakenBack()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        JsonNode before = await client.Get("/cell?n=1");
        int left = (int)(await client.Get("/state"))["leftCount"]!;

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "reject", "the lead was loose", "channel");
        Decision line = Ledger.Read(_folder.Audit).Lines.Single();
        JsonNode after = await client.Get("/cell?n=1");
        JsonNode undo = body["state"]!["undo"]!;
        (HttpStatusCode taken, JsonNode back) = await client.Post("/withdraw", new { number = (int)undo["number"]! });

        Assert.Equal(("questionable", false), ((string)before["whole"]!["verdict"]!, (bool)before["whole"]!["isDecided"]!));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (status, taken));
        Assert.Null(line.Trial);
        Assert.Equal(((string)before["channel"]!, "review"), (line.Channel, line.Origin));
        Assert.Equal((Grade.Reject, Grade.Questionable), (line.Verdict, line.Computed.Single().Verdict));
        Assert.Equal(("reject", true), ((string)after["whole"]!["final"]!, (bool)after["whole"]!["isDecided"]!));
        Assert.Contains("as a whole: reject", (string)undo["words"]!, StringComparison.Ordinal);

        // Its trials became worse by it, and with that they are decided, too.
        Assert.Equal(("reject", true), ((string)after["final"]!, (bool)after["isDecided"]!));
        Assert.True((int)body["state"]!["leftCount"]! < left - 1);
        Assert.Equal(left, (int)back["state"]!["leftCount"]!);
    }

    [Fact]
    public async Task WhatIsLeftCountsChannelsAndLeadsToThemWhenTheTrialsAreDone()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer") with { Scope = ReviewScope.All });
        string before = (string)(await client.Get("/state"))["left"]!;
        JsonNode body = await Everything(client);
        int next = (int)body["next"]!;
        JsonNode cell = await client.Get(FormattableString.Invariant($"/cell?n={next}"));

        Assert.Matches("and [0-9]+ channels as a whole$", before);
        Assert.Matches("^[0-9]+ channels as a whole$", (string)body["state"]!["left"]!);
        Assert.Empty((string)body["state"]!["done"]!);
        Assert.NotEqual("pass", (string)cell["whole"]!["verdict"]!, StringComparer.Ordinal);

        int channels = 0;
        for (int? open = next; open is { } number; channels++)
        {
            (_, body) = await client.Decide(number, "pass", "good enough", "channel");
            open = (int?)body["next"];
        }

        Assert.Equal(FormattableString.Invariant($"{channels} channels as a whole"), before[(before.IndexOf("and ", StringComparison.Ordinal) + 4)..]);
        Assert.Equal(("nothing", "54 of 54 decided"), ((string)body["state"]!["left"]!, (string)body["state"]!["progress"]!));
        Assert.Equal("This list is done: 54 decided. Ctrl-C, or Update tables, brings tables up to date.", (string)body["state"]!["done"]!);
    }

    [Fact]
    public async Task AtTheEndItIsSaidWhatIsNotOnTheList()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer") with { Scope = ReviewScope.Questionable });
        int? next = (int?)(await client.Get("/state"))["first"];
        JsonNode state = new JsonObject();
        while (next is { } number)
        {
            bool isDecided = (bool)(await client.Get(FormattableString.Invariant($"/cell?n={number}")))["isDecided"]!;
            (_, JsonNode body) = await client.Decide(number, "pass", "seen", isDecided ? "channel" : "trial");
            (next, state) = ((int?)body["next"], body["state"]!);
            if (next is null && (int)state["leftCount"]! > 0)
            {
                next = number;
            }
        }

        Assert.Matches("^This list is done: [0-9]+ decided[.] [0-9]+ reject are not on it [(]--cells flagged[)][.] Ctrl-C, or Update tables,", (string)state["done"]!);
    }

    [Fact]
    public async Task ASecondDecisionAboutAChannelIsAConflictAndOneAboutATrialIsNone()
    {
        await using ReviewClient one = await ReviewClient.Start(_folder.By("R.Viewer"));
        await using ReviewClient two = await ReviewClient.Start(_folder.By("S.Econd"));
        int seen = await two.Seen(1);
        await one.Decide(1, "pass", "the trial");
        (HttpStatusCode besides, _) = await two.Decide(1, "pass", "the channel", seen, "channel");
        (HttpStatusCode late, JsonNode told) = await one.Decide(1, "reject", "the channel, too", seen, "channel");

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (besides, late));
        Assert.Equal("S.Econd has decided since you looked: pass, the channel", (string)told["error"]!);
        Assert.Equal(2, Ledger.Read(_folder.Audit).Lines.Length);
    }

    [Fact]
    public async Task TrialsThatAreAlikeAreDecidedInOneStepAndTakenBackInOne()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        JsonNode cell = await client.Get("/cell?n=1");
        int alike = (int)cell["alike"]!;
        int left = (int)(await client.Get("/state"))["leftCount"]!;

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", "goes with our filter", "alike", alike);
        Decision[] lines = [.. Ledger.Read(_folder.Audit).Lines];
        JsonNode undo = body["state"]!["undo"]!;
        JsonNode alone = await client.Get("/cell?n=1");
        (HttpStatusCode taken, JsonNode back) = await client.Post("/withdraw", new { number = (int)undo["number"]! });
        Decision[] withdrawals = [.. Ledger.Read(_folder.Audit).Lines.Skip(lines.Length)];

        Assert.True(alike > 1);
        Assert.Equal((HttpStatusCode.OK, alike + 1, alike + 1), (status, (int)body["count"]!, lines.Length));
        Assert.Equal(0, (int)alone["alike"]!);
        Assert.Equal(["review", .. Enumerable.Repeat("review:like=1", alike)], lines.Select(line => line.Origin), StringComparer.Ordinal);
        Assert.All(lines, line => Assert.Equal(((string)cell["channel"]!, (string)cell["recording"]!), (line.Channel, line.Recording)));
        Assert.All(lines, line => Assert.Equal((Grade.Pass, "goes with our filter"), (line.Verdict, line.Reason)));
        Assert.Single(lines.Select(line => string.Join(' ', line.Computed.Single().Reasons)).Distinct(StringComparer.Ordinal));
        Assert.Equal(lines.Length, lines.Select(line => line.Trial!.Number).Distinct().Count());
        Assert.Contains(FormattableString.Invariant($" and {alike} more: pass"), (string)undo["words"]!, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.OK, 1, left), (taken, (int)back["cell"]!, (int)back["state"]!["leftCount"]!));
        Assert.Equal(lines.Select(line => (int?)line.Number), withdrawals.Select(line => line.Withdraws));
        Assert.Null(back["state"]!["undo"]);
    }

    [Fact]
    public async Task OneOfThemThatIsDecidedAnewIsTakenBackAlone()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        int alike = (int)(await client.Get("/cell?n=1"))["alike"]!;
        await client.Decide(1, "pass", "goes with our filter", "alike", alike);
        await client.Decide(1, "reject", "not this one");

        (_, JsonNode first) = await client.Post("/withdraw", new { number = alike + 2 });
        (_, JsonNode second) = await client.Post("/withdraw", new { number = alike + 1 });

        Assert.Equal((1, alike + 1), ((int)first["count"]!, (int)second["count"]!));
    }

    [Fact]
    public async Task AnotherNumberThanWasShownIsRefused()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        int alike = (int)(await client.Get("/cell?n=1"))["alike"]!;

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", "x", "alike", alike - 1);
        (HttpStatusCode hidden, _) = await client.Decide(1, "pass", "x", "trial", alike);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (status, hidden));
        Assert.Equal(FormattableString.Invariant($"this would be for {alike} other trials now: nothing was decided"), (string)body["error"]!);
        Assert.Empty(Ledger.Read(_folder.Audit).Lines);
    }

    [Fact]
    public async Task WhatSomebodyElseHasDecidedMeanwhileIsLeftAlone()
    {
        await using ReviewClient one = await ReviewClient.Start(_folder.By("R.Viewer"));
        await using ReviewClient two = await ReviewClient.Start(_folder.By("S.Econd"));
        JsonNode cell = await two.Get("/cell?n=1");
        int other = (int)cell["later"]!;
        Assert.Equal((int)cell["alike"]!, (int)(await two.Get(FormattableString.Invariant($"/cell?n={other}")))["alike"]!);
        await one.Decide(other, "reject", "moved");

        (HttpStatusCode status, _) = await two.Decide(1, "pass", "all of them", (int)cell["seen"]!, "alike", (int)cell["alike"]! - 1);
        JsonNode again = await two.Get("/cell?n=1");

        Assert.Equal((HttpStatusCode.OK, (int)cell["alike"]! - 1), (status, Ledger.Read(_folder.Audit).Lines.Length - 2));
        Assert.Equal(0, (int)again["alike"]!);
        Assert.Equal(Grade.Reject, FinalOf(other));
    }

    private Grade FinalOf(int number)
    {
        ReviewBook book = ReviewBook.Open(_folder.By("R.Viewer"), CancellationToken.None);
        ReviewCell place = book.Cells[number - 1];
        RecordingResult result = book.BareOf(place.Recording);
        return FinalVerdict.OfTrial(result, result.Channels[place.Channel], result.Channels[place.Channel].Cells[place.Cell]);
    }

    // Every trial keeps its verdict, so that none is made worse by its channel.
    private static async Task<JsonNode> Everything(ReviewClient client)
    {
        JsonNode body = await client.Get("/state");
        for (int n = 1; n <= 54; n++)
        {
            (_, body) = await client.Decide(n, "pass", "seen");
        }

        return body;
    }
}
