using System.Net;
using System.Net.Http.Headers;
using System.Net.NetworkInformation;
using System.Text;
using ChannelAudit.Decisions;
using Microsoft.AspNetCore.Http;
using Xunit;

namespace ChannelAudit.Review.Tests;

/// <summary>Who gets in, and what is refused.</summary>
public sealed class GuardTests : IDisposable
{
    private readonly ReviewFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task AnAddressWorksOnceAndTheNextOneIsShown()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        using HttpClient other = new();

        Assert.Equal(2, client.Addresses.Count);
        Assert.NotEqual(client.Addresses[0], client.Addresses[1], StringComparer.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, (await other.GetAsync(client.Addresses[0])).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await other.GetAsync(client.Server.Origin + "/")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync(client.Addresses[1])).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync(client.Server.Origin + "/state")).StatusCode);
        Assert.Equal(3, client.Addresses.Count);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/review.js")]
    [InlineData("/form.js")]
    [InlineData("/state")]
    [InlineData("/cell?n=1")]
    [InlineData("/ribbon?n=1")]
    [InlineData("/picture?n=1&from=0&to=4")]
    [InlineData("/sheet?n=1")]
    public async Task WithoutACookieThereIsNothing(string path)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        using HttpClient other = new();

        using HttpResponseMessage answer = await other.GetAsync(client.Server.Origin + path);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.DoesNotContain("P01", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheCookieIsForThisPageOnly()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        using HttpClientHandler handler = new() { AllowAutoRedirect = false };
        using HttpClient browser = new(handler);

        using HttpResponseMessage answer = await browser.GetAsync(client.Addresses[1]);
        string cookie = answer.Headers.GetValues("Set-Cookie").Single();

        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.StartsWith(FormattableString.Invariant($"channelaudit-review-{new Uri(client.Server.Origin).Port}="), cookie, StringComparison.Ordinal);
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task WhoeverOpensAUsedAddressReadsAPageAndWhoWasLetInIsLetInAgain()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        using HttpClient other = new();
        other.DefaultRequestHeaders.Accept.ParseAdd("text/html,application/xhtml+xml");

        using HttpResponseMessage used = await other.GetAsync(client.Addresses[0]);
        using HttpResponseMessage bare = await other.GetAsync(client.Server.Origin + "/?token=<b>");
        (HttpStatusCode again, string page) = await client.Send(HttpMethod.Get, new Uri(client.Addresses[0]).PathAndQuery);
        (_, string data) = await client.Send(HttpMethod.Get, "/nothing");

        Assert.Equal((HttpStatusCode.Forbidden, "text/html"), (used.StatusCode, used.Content.Headers.ContentType!.MediaType));
        string text = await used.Content.ReadAsStringAsync();
        Assert.Contains("<h1>This address was used before.</h1>", text, StringComparison.Ordinal);
        Assert.Contains("Open the latest address that the terminal shows", text, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", used.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", await bare.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, again);
        Assert.Contains("<title>Review</title>", page, StringComparison.Ordinal);
        Assert.Equal(2, client.Addresses.Count);
        Assert.StartsWith("{", data, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("attacker.example:80")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("[::1]:80")]
    public async Task AnotherHostIsRefused(string host)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        (HttpStatusCode status, _) = await client.Send(HttpMethod.Get, "/state", request => request.Headers.Host = host);

        Assert.Equal(HttpStatusCode.MisdirectedRequest, status);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("null")]
    [InlineData("http://attacker.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("https://{host}")]
    [InlineData("http://{host}.attacker.example")]
    public async Task AForeignPageCannotWrite(string? origin)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        string? from = origin?.Replace("{host}", new Uri(client.Server.Origin).Authority, StringComparison.Ordinal);

        (HttpStatusCode status, _) = await client.Send(HttpMethod.Post, "/decide", request =>
        {
            request.Content = new StringContent("{\"n\":1,\"reach\":\"trial\",\"others\":0,\"verdict\":\"pass\",\"reason\":\"x\",\"seen\":0}", Encoding.UTF8, "application/json");
            if (from is not null)
            {
                request.Headers.Add("Origin", from);
            }
        });

        Assert.Equal(HttpStatusCode.Forbidden, status);
        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Theory]
    [InlineData("same-site")]
    [InlineData("cross-site")]
    public async Task WhatAnotherPageAsksForIsRefused(string site)
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        (HttpStatusCode status, _) = await client.Send(HttpMethod.Get, "/picture?n=1&from=0&to=4", request => request.Headers.Add("Sec-Fetch-Site", site));

        Assert.Equal(HttpStatusCode.Forbidden, status);
    }

    [Theory]
    [InlineData("/decide")]
    [InlineData("/withdraw")]
    [InlineData("/tables")]
    public async Task NothingChangesByReading(string path)
    {
        bool isUpdated = false;
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"), _ => isUpdated = true);

        (HttpStatusCode get, _) = await client.Send(HttpMethod.Get, path + "?n=1&verdict=pass&reason=x&seen=0&number=1");
        (HttpStatusCode put, _) = await client.Send(HttpMethod.Put, path);

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed), (get, put));
        Assert.False(isUpdated);
        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task ABodyIsSmallAndJson()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        Action<HttpRequestMessage> With(string text, string type) => request =>
        {
            request.Content = new StringContent(text);
            request.Content.Headers.ContentType = new MediaTypeHeaderValue(type);
            request.Headers.Add("Origin", client.Server.Origin);
        };
        string large = "{\"n\":1,\"reach\":\"trial\",\"others\":0,\"verdict\":\"pass\",\"seen\":0,\"reason\":\"" + new string('x', 20_000) + "\"}";
        string right = "{\"n\":1,\"reach\":\"trial\",\"others\":0,\"verdict\":\"pass\",\"seen\":0,\"reason\":\"x\"}";

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await client.Send(HttpMethod.Post, "/decide", With(large, "application/json"))).Status);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await client.Send(HttpMethod.Post, "/decide", With(right, "text/plain"))).Status);
        string[] all =
        [
            "[]", "{", "{}", right[..^1] + ",\"more\":1}", right.Replace("1,", "1.5,", StringComparison.Ordinal), right.Replace("\"seen\":0", "\"seen\":-1", StringComparison.Ordinal), right.Replace("pass", "good", StringComparison.Ordinal), right.Replace("trial", "study", StringComparison.Ordinal), "{\"n\":{\"n\":{}}}",
            right.Replace("\"x\"", "\"\\ud800\"", StringComparison.Ordinal), right.Replace("\"seen\"", "\"\\udc00\"", StringComparison.Ordinal),
        ];
        foreach (string wrong in all)
        {
            Assert.Equal(HttpStatusCode.BadRequest, (await client.Send(HttpMethod.Post, "/decide", With(wrong, "application/json"))).Status);
        }

        Assert.False(File.Exists(Path.Combine(_folder.Audit, Ledger.FileName)));
    }

    [Fact]
    public async Task EveryAnswerCarriesTheHeadersOfAPageThatKeepsToItself()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        foreach (string path in new[] { "/", "/review.js", "/review.css", "/state", "/cell?n=1", "/nothing", "/picture?n=1&from=0&to=4" })
        {
            using HttpResponseMessage answer = await client.Http.GetAsync(path);
            string policy = answer.Headers.GetValues("Content-Security-Policy").Single();

            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
            Assert.True(answer.Headers.CacheControl!.NoStore);
            Assert.False(answer.Headers.Contains("Server"));
        }
    }

    [Fact]
    public void TooManyRequestsAreTurnedAway()
    {
        using Guard guard = new(new AccessTokens());
        guard.ListensOn(80);
        DefaultHttpContext context = new();
        context.Request.Method = "GET";
        context.Request.Host = new HostString("127.0.0.1:80");

        int[] all = [.. Enumerable.Range(0, 5000).Select(_ => guard.Refuses(context))];

        Assert.Equal(0, all[0]);
        Assert.Contains(StatusCodes.Status429TooManyRequests, all);
    }

    [Fact]
    public async Task ItListensOnTheLoopbackOnly()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));
        int port = new Uri(client.Server.Origin).Port;

        IPEndPoint[] listening = [.. IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(point => point.Port == port)];

        Assert.Equal([new IPEndPoint(IPAddress.Loopback, port)], listening);
    }

    [Fact]
    public async Task NoNumberLeadsOutOfTheList()
    {
        await using ReviewClient client = await ReviewClient.Start(_folder.By("R.Viewer"));

        foreach (string number in new[] { "0", "-1", "99999", "../../etc/passwd", "1e3", "" })
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await client.Send(HttpMethod.Get, $"/cell?n={number}")).Status);
            Assert.Equal(HttpStatusCode.NotFound, (await client.Send(HttpMethod.Get, $"/sheet?n={number}")).Status);
            Assert.Equal(HttpStatusCode.NotFound, (await client.Send(HttpMethod.Get, $"/picture?n={number}&from=0&to=1")).Status);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await client.Send(HttpMethod.Get, "/picture?n=1&from=NaN&to=1e300")).Status);
    }
}
