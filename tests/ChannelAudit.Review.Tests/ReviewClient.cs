using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using ChannelAudit.Reports.Reviewing;

namespace ChannelAudit.Review.Tests;

/// <summary>A review server in this process, and a browser that has opened its address.</summary>
internal sealed class ReviewClient : IAsyncDisposable
{
    private readonly HttpClientHandler _handler;

    private ReviewClient(ReviewServer server, List<string> addresses, HttpClientHandler handler)
    {
        (Server, Addresses, _handler) = (server, addresses, handler);
        Http = new HttpClient(handler, disposeHandler: false) { BaseAddress = new Uri(server.Origin) };
    }

    /// <summary>The server.</summary>
    public ReviewServer Server { get; }

    /// <summary>The addresses that were shown.</summary>
    public List<string> Addresses { get; }

    /// <summary>The browser.</summary>
    public HttpClient Http { get; }

    /// <summary>Starts a server and opens its address.</summary>
    public static async Task<ReviewClient> Start(ReviewOptions options, Func<CancellationToken, bool>? update = null)
    {
        List<string> addresses = [];
        ReviewServer server = await ReviewServer.Start(
            ReviewBook.Open(options, CancellationToken.None), 0, new FixedClock(), update ?? (_ => false), addresses.Add, CancellationToken.None);
        ReviewClient client = new(server, addresses, new HttpClientHandler { CookieContainer = new CookieContainer() });
        using HttpResponseMessage answer = await client.Http.GetAsync(addresses[0]);
        return answer.IsSuccessStatusCode ? client : throw new InvalidOperationException($"{answer.StatusCode}");
    }

    /// <summary>Reads JSON.</summary>
    public async Task<JsonNode> Get(string path) => JsonNode.Parse(await Bytes(path))!;

    /// <summary>Reads bytes; turned away for asking too fast, it asks again.</summary>
    public async Task<byte[]> Bytes(string path)
    {
        using HttpResponseMessage answer = await Http.GetAsync(path);
        if (answer.StatusCode == HttpStatusCode.TooManyRequests)
        {
            await Task.Delay(20);
            return await Bytes(path);
        }

        byte[] bytes = await answer.Content.ReadAsByteArrayAsync();
        return answer.IsSuccessStatusCode ? bytes : throw new InvalidOperationException($"{path}: {answer.StatusCode} {Encoding.UTF8.GetString(bytes)}");
    }

    /// <summary>Posts an object as the page does.</summary>
    public async Task<(HttpStatusCode Status, JsonNode Body)> Post(string path, object body, string? origin = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, path) { Content = JsonContent.Create(body) };
        request.Headers.Add("Origin", origin ?? Server.Origin);
        using HttpResponseMessage answer = await Http.SendAsync(request);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!);
    }

    /// <summary>Decides about a cell that was just looked at.</summary>
    public async Task<(HttpStatusCode Status, JsonNode Body)> Decide(int number, string verdict, string reason, string reach = "trial", int others = 0) =>
        await Decide(number, verdict, reason, await Seen(number), reach, others);

    /// <summary>Decides about a cell that was looked at when the ledger had a number of lines.</summary>
    public async Task<(HttpStatusCode Status, JsonNode Body)> Decide(int number, string verdict, string reason, int seen, string reach = "trial", int others = 0) =>
        await Post("/decide", new { n = number, reach, others, verdict, reason, seen });

    /// <summary>Lines of the ledger that a cell is shown from.</summary>
    public async Task<int> Seen(int number) => (int)(await Get(FormattableString.Invariant($"/cell?n={number}")))["seen"]!;

    /// <summary>Sends a request as it stands.</summary>
    public async Task<(HttpStatusCode Status, string Text)> Send(HttpMethod method, string path, Action<HttpRequestMessage>? with = null)
    {
        using HttpRequestMessage request = new(method, path);
        with?.Invoke(request);
        using HttpResponseMessage answer = await Http.SendAsync(request);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        _handler.Dispose();
        await Server.DisposeAsync();
    }

    private sealed class FixedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 12, 9, 30, 0, TimeSpan.Zero);
    }
}
