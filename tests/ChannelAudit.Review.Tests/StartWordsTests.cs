using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Runs;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>What the terminal says at the start.</summary>
public sealed class StartWordsTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ItSaysWhatIsThere()
    {
        Assert.Contains($"2 of 2 recordings found below {_folder.Data}.\n", Words(_folder.By("R.Viewer")), StringComparison.Ordinal);
        Assert.Contains(
            "Pictures of 0 of 6 channels; give --data ROOT to see the signals.\n", Words(_folder.By("R.Viewer") with { DataRoot = null }), StringComparison.Ordinal);

        File.Delete(Path.Combine(_folder.Data, ReviewFolder.Paths[0]));
        _folder.PutSheets(RecordingId.Of(ReviewFolder.Paths[0]));

        Assert.Contains("1 of 2 recordings found below", Words(_folder.By("R.Viewer")), StringComparison.Ordinal);
        Assert.Contains("Pictures of 3 of 6 channels;", Words(_folder.By("R.Viewer") with { DataRoot = null }), StringComparison.Ordinal);
    }

    [Fact]
    public void ItSaysWhatIsLeftAndWhatACellIs()
    {
        string words = Words(_folder.By("R.Viewer"));

        Assert.Matches("^Left to look at: [0-9]+ questionable, [0-9]+ reject, and [0-9]+ channels as a whole; 0 of [0-9]+ decided[.] A cell is one trial", words);
        Assert.Contains("R.Viewer has decided nothing here yet.\n", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ANameThatDecidedNothingIsHeldAgainstThoseThatDid()
    {
        await using (ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer")))
        {
            await client.Decide(1, "pass", "one");
            await client.Decide(2, "pass", "two");
            await client.Post("/withdraw", new { number = 2 });
        }

        Assert.Contains("R.Veiwer has decided nothing here yet; so far: R.Viewer (1).\n", Words(_folder.By("R.Veiwer")), StringComparison.Ordinal);
        Assert.Contains("1 of them by others", Words(_folder.By("R.Veiwer")), StringComparison.Ordinal);
        Assert.Contains("R.Viewer has made 1 decision here.\n", Words(_folder.By("R.Viewer")), StringComparison.Ordinal);
        Assert.DoesNotContain("by others", Words(_folder.By("R.Viewer")), StringComparison.Ordinal);
        Assert.DoesNotContain("R.Viewer", Words(_folder.BlindBy("S.Econd")), StringComparison.Ordinal);
        Assert.Contains("Left out: 2 cells that you have decided with everything in view.\n", Words(_folder.BlindBy("R.Viewer")), StringComparison.Ordinal);
    }

    [Fact]
    public void ABlindPersonIsToldWhatBlindDecisionsDo()
    {
        string words = Words(_folder.BlindBy("S.Econd", 7));

        Assert.Contains("Blind, in the order of seed 7.\n", words, StringComparison.Ordinal);
        Assert.Contains("A blind decision never takes the place of one made with everything in view.\n", words, StringComparison.Ordinal);
        Assert.DoesNotContain("questionable", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ThePageShowsTheSignsOfTheReport()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        string html = await client.Http.GetStringAsync("/");
        string script = await client.Http.GetStringAsync("/parts.js");

        foreach (Grade grade in Enum.GetValues<Grade>())
        {
            string sign = VerdictWords.Shape(grade);
            string word = VerdictWords.Code(grade);
            Assert.Contains($">{sign}</i> {word}<", html, StringComparison.Ordinal);
            Assert.Contains($"{word}: '{sign}'", script, StringComparison.Ordinal);
        }

        Assert.Contains($"'{VerdictWords.OpenPass}'", script, StringComparison.Ordinal);
    }

    private static string Words(ReviewOptions options)
    {
        ReviewBook book = ReviewBook.Open(options, CancellationToken.None);
        using RecordingShelf shelf = new(book.Audit, options.DataRoot);
        return StartWords.Of(book, new CellPictures(book, shelf));
    }
}
