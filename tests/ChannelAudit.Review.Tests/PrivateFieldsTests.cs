using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using ChannelAudit.Decisions;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>Words planted in the headers of the recordings are in no answer of the server and in no line of the ledger; nor are the folders that they lie in.</summary>
public sealed class PrivateFieldsTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void TheyAreThere() => Assert.Contains(
        ReviewFolder.Person, Encoding.Latin1.GetString(File.ReadAllBytes(Path.Combine(_folder.Data, ReviewFolder.Paths[0]))), StringComparison.Ordinal);

    [Fact]
    public async Task NoAnswerHoldsThem()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        await client.Decide(1, "questionable", "seen");
        List<string> paths = ["/state", "/", "/nothing", "/cell?n=0"];
        for (int n = 1; n <= 54; n++)
        {
            string[] kinds = ["/cell?n={0}", "/ribbon?n={0}", "/picture?n={0}&from=2&to=6", "/sheet?n={0}"];
            paths.AddRange(kinds.Select(kind => kind.Replace("{0}", n.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)));
        }

        foreach (string path in paths)
        {
            using HttpResponseMessage answer = await client.Http.GetAsync(path);
            AssertHidden(answer.Headers.ToString() + answer.Content.Headers + Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync()));
        }

        AssertHidden(await File.ReadAllTextAsync(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task NorDoesAFaultWhenARecordingIsDamagedOrGone()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        string file = Path.Combine(_folder.Data, ReviewFolder.Paths[0]);
        byte[] whole = await File.ReadAllBytesAsync(file);
        string other = Path.Combine(_folder.Data, ReviewFolder.Paths[1]);
        await File.WriteAllBytesAsync(file, whole[..300]);
        File.Delete(other);

        List<HttpStatusCode> seen = [];
        for (int n = 1; n <= 54; n += 3)
        {
            (HttpStatusCode status, string text) = await client.Send(HttpMethod.Get, FormattableString.Invariant($"/picture?n={n}&from=2&to=6"));
            (_, JsonNode body) = await client.Decide(n, "pass", "seen", seen: 0);
            seen.Add(status);

            // Where the recording lies may be said here: to the person who named that folder, and it goes into no file.
            AssertNobody(text + body);
        }

        Assert.Contains(HttpStatusCode.UnprocessableEntity, seen);
    }

    private static void AssertNobody(string text)
    {
        Assert.DoesNotContain(ReviewFolder.Person, text, StringComparison.Ordinal);
        Assert.DoesNotContain("1951", text, StringComparison.Ordinal);
    }

    private void AssertHidden(string text)
    {
        AssertNobody(text);
        Assert.DoesNotContain(_folder.Data, text, StringComparison.Ordinal);
        Assert.DoesNotContain(_folder.Audit, text, StringComparison.Ordinal);
    }
}
