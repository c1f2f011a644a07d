using System.Net;
using System.Text.Json.Nodes;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>What becomes of decisions.</summary>
public sealed class DecidingTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task QuestionableCellsComeFirstThenRejectedOnesThenTheRest()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        int count = (int)(await client.Get("/state"))["count"]!;
        List<string> verdicts = [];
        for (int n = 1; n <= count; n++)
        {
            verdicts.Add((string)(await client.Get(FormattableString.Invariant($"/cell?n={n}")))["verdict"]!);
        }

        Assert.Equal(2 * 3 * 9, count);
        Assert.Equal(verdicts.OrderBy(word => word switch { "questionable" => 0, "reject" => 1, _ => 2 }), verdicts, StringComparer.Ordinal);
        Assert.Contains("questionable", verdicts, StringComparer.Ordinal);
        Assert.Contains("reject", verdicts, StringComparer.Ordinal);
    }

    [Fact]
    public async Task MeasuresBeyondTheirLimitComeFirst()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        string?[] grades = [.. (await client.Get("/cell?n=1"))["measures"]!.AsArray().Select(one => (string?)one!["grade"])];

        Assert.Equal("questionable", grades[0]);
        Assert.Equal(grades.OrderBy(grade => grade switch { "reject" => 0, "questionable" => 1, _ => 2 }), grades, StringComparer.Ordinal);
    }

    [Fact]
    public async Task ADecisionIsALineOfTheLedgerAndLeadsOn()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        JsonNode before = await client.Get("/state");

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", "the drift is below our filter");
        Decision line = Ledger.Read(_folder.Audit).Lines.Single();
        JsonNode cell = await client.Get("/cell?n=1");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(2, (int)body["next"]!);
        Assert.Equal((int)before["leftCount"]! - 1, (int)body["state"]!["leftCount"]!);
        Assert.Equal(("R.Viewer", Grade.Pass, "the drift is below our filter", "review", false), (line.By, line.Verdict, line.Reason, line.Origin, line.Blind));
        Assert.Equal(Grade.Questionable, line.Computed.Single().Verdict);
        Assert.Equal(("questionable", "pass", true), ((string)cell["verdict"]!, (string)cell["final"]!, (bool)cell["isDecided"]!));
        Assert.Equal("holds", (string)cell["decisions"]![0]!["state"]!);
        Assert.Equal("the drift is below our filter", (string)(await client.Get("/state"))["reasons"]![0]!);
    }

    [Fact]
    public async Task UndoIsAWithdrawingLine()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        await client.Decide(1, "pass", "one");
        await client.Decide(2, "reject", "two");

        (HttpStatusCode other, _) = await client.Post("/withdraw", new { number = 1 });
        (HttpStatusCode last, _) = await client.Post("/withdraw", new { number = 2 });
        (HttpStatusCode again, _) = await client.Post("/withdraw", new { number = 2 });
        (HttpStatusCode first, JsonNode body) = await client.Post("/withdraw", new { number = 1 });

        Assert.Equal(
            (HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK, HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK), (other, last, again, first));
        Assert.Equal([null, null, 2, 1], Ledger.Read(_folder.Audit).Lines.Select(line => line.Withdraws));
        Assert.Null(body["state"]!["undo"]);
        Assert.False((bool)(await client.Get("/cell?n=1"))["isDecided"]!);
    }

    [Fact]
    public async Task ARestartLosesNothing()
    {
        int left;
        await using (ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer")))
        {
            await client.Decide(1, "pass", "one");
            left = (int)(await client.Get("/state"))["leftCount"]!;
        }

        await using ReviewClient again = await ReviewClient.Start(_folder.By("R.Viewer"));
        JsonNode state = await again.Get("/state");

        Assert.Equal((left, 2, 1), ((int)state["leftCount"]!, (int)state["first"]!, (int)state["undo"]!["number"]!));
        Assert.True((bool)state["undo"]!["isEarlier"]!);
        Assert.Equal("one", (string)(await again.Get("/cell?n=1"))["decisions"]![0]!["reason"]!);
    }

    [Fact]
    public async Task TwoPeopleSeeEachOtherAndAConflictIsToldBeforeItIsWritten()
    {
        await using ReviewClient one = await ReviewClient.Start(_folder.By("R.Viewer"));
        await using ReviewClient two = await ReviewClient.Start(_folder.By("S.Econd"));
        int seen = (int)(await two.Get("/cell?n=1"))["seen"]!;
        await one.Decide(1, "pass", "looks fine");
        await one.Decide(2, "reject", "elsewhere");

        (HttpStatusCode first, JsonNode told) = await two.Decide(1, "reject", "does not", seen);
        int between = Ledger.Read(_folder.Audit).Lines.Length;
        (HttpStatusCode second, _) = await two.Decide(1, "reject", "does not", (int)told["seen"]!);
        (HttpStatusCode elsewhere, _) = await two.Decide(3, "reject", "nobody was here", seen);

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.OK, HttpStatusCode.OK), (first, second, elsewhere));
        Assert.Equal("R.Viewer has decided since you looked: pass, looks fine", (string)told["error"]!);
        Assert.Equal(2, between);
        Assert.Equal(["R.Viewer", "R.Viewer", "S.Econd", "S.Econd"], Ledger.Read(_folder.Audit).Lines.Select(line => line.By), StringComparer.Ordinal);
        Assert.Equal(2, (await one.Get("/cell?n=1"))["decisions"]!.AsArray().Count);
    }

    [Fact]
    public async Task AWithdrawalBetweenIsAConflictToo()
    {
        await using ReviewClient one = await ReviewClient.Start(_folder.By("R.Viewer"));
        await using ReviewClient two = await ReviewClient.Start(_folder.By("S.Econd"));
        await one.Decide(1, "pass", "looks fine");
        int seen = (int)(await two.Get("/cell?n=1"))["seen"]!;
        await one.Post("/withdraw", new { number = 1 });

        (HttpStatusCode status, JsonNode told) = await two.Decide(1, "reject", "does not", seen);

        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Equal("R.Viewer has taken a decision back since you looked: pass, looks fine", (string)told["error"]!);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("two\nlines")]
    public async Task AReasonIsALineOfText(string reason)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", reason);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("the reason", (string)body["error"]!, StringComparison.Ordinal);
        Assert.Empty(Ledger.Read(_folder.Audit).Lines);
    }

    [Fact]
    public async Task ReadOnlyDecidesNothing()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer") with { IsReadOnly = true });

        (HttpStatusCode status, _) = await client.Decide(1, "pass", "x");
        (HttpStatusCode undo, _) = await client.Post("/withdraw", new { number = 1 });

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (status, undo));
        Assert.True((bool)(await client.Get("/state"))["isReadOnly"]!);
        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task AnotherRecordingThanTheAuditedOneCannotBeDecidedAbout()
    {
        string path = Path.Combine(_folder.Data, ReviewFolder.Paths[1].Replace('/', Path.DirectorySeparatorChar));
        byte[] bytes = await File.ReadAllBytesAsync(path);
        bytes[^1] ^= 1;
        await File.WriteAllBytesAsync(path, bytes);
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", "x");
        JsonNode cell = await client.Get("/cell?n=1");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("another SHA-256", (string)body["error"]!, StringComparison.Ordinal);
        Assert.Equal("differs", (string)cell["data"]!);
        Assert.Contains("not the one that was audited", (string)cell["dataWords"]!, StringComparison.Ordinal);
        Assert.StartsWith("Nothing can be decided here", (string)cell["obstacle"]!, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task WithoutDataNothingIsDecidedOfWhichNothingIsShown()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer") with { DataRoot = null });

        JsonNode bare = await client.Get("/cell?n=1");
        (HttpStatusCode picture, _) = await client.Send(HttpMethod.Get, "/picture?n=1&from=0&to=4");
        (HttpStatusCode status, JsonNode body) = await client.Decide(1, "pass", "x");
        (HttpStatusCode whole, _) = await client.Decide(1, "pass", "x", "channel");

        Assert.Equal(("none", false), ((string)bare["data"]!, (bool)bare["hasSheet"]!));
        Assert.StartsWith("Nothing of this trial can be shown", (string)bare["dataWords"]!, StringComparison.Ordinal);
        Assert.StartsWith("Nothing can be decided here", (string)bare["obstacle"]!, StringComparison.Ordinal);
        Assert.Equal(
            (HttpStatusCode.NotFound, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (picture, status, whole));
        Assert.Equal("nothing of this trial is shown: nothing was decided", (string)body["error"]!);
        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task WithoutDataAPictureOfTheAuditIsEnoughToDecide()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer") with { DataRoot = null });
        JsonNode bare = await client.Get("/cell?n=1");
        _folder.PutSheets((string)bare["recording"]!);

        JsonNode cell = await client.Get("/cell?n=1");
        (HttpStatusCode status, _) = await client.Decide(1, "pass", "x");

        Assert.Equal((true, string.Empty, HttpStatusCode.OK), ((bool)cell["hasSheet"]!, (string)cell["obstacle"]!, status));
        Assert.Contains("--data", (string)cell["dataWords"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task LabelsAreTextWhateverTheyHold()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        List<string> labels = [];
        for (int n = 1; n <= 9; n++)
        {
            string text = await client.Http.GetStringAsync(FormattableString.Invariant($"/cell?n={n}"));
            Assert.DoesNotContain('<', text);
            labels.Add((string)JsonNode.Parse(text)!["label"]!);
        }

        Assert.Contains(ReviewFolder.Markup, labels, StringComparer.Ordinal);
        Assert.DoesNotContain('<', await client.Http.GetStringAsync("/ribbon?n=1"));
    }

    [Fact]
    public async Task TheTablesAreBroughtUpToDateOnRequest()
    {
        int updates = 0;
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"), _ => ++updates > 0);
        await client.Decide(1, "pass", "x");

        (HttpStatusCode status, JsonNode body) = await client.Post("/tables", new { });

        Assert.Equal((HttpStatusCode.OK, true, 1), (status, (bool)body["isWritten"]!, updates));
    }

    [Fact]
    public void WhatCannotBeReviewedIsOneErrorAndOneHint()
    {
        ChannelAuditException blind = Assert.Throws<ChannelAuditException>(() => ReviewBook.Open(_folder.BlindBy("S.Econd") with { DataRoot = null }, CancellationToken.None));
        ChannelAuditException data = Assert.Throws<ChannelAuditException>(() => ReviewBook.Open(_folder.By("R.Viewer") with { DataRoot = "/no/where" }, CancellationToken.None));
        ChannelAuditException audit = Assert.Throws<ChannelAuditException>(() => ReviewBook.Open(_folder.By("R.Viewer") with { Folder = _folder.Data }, CancellationToken.None));

        ChannelAuditException none = Assert.Throws<ChannelAuditException>(() => ReviewBook.Open(_folder.By("R.Viewer") with { DataRoot = _folder.Audit }, CancellationToken.None));

        Assert.Equal($"--data: below {_folder.Audit} lies none of the 2 recordings of the audit", none.Message);
        Assert.StartsWith("a blind review needs --data", blind.Message, StringComparison.Ordinal);
        Assert.Equal("--data: there is no folder /no/where", data.Message);
        Assert.Contains("not an audit", audit.Message, StringComparison.Ordinal);
    }
}
