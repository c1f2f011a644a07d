using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;

namespace ChannelAudit.Review;

/// <summary>Decides before anything is read whether a request is one of the page's own.</summary>
/// <remarks>
/// The server listens on the loopback only; what reaches it there is other programs and pages of the same machine. A page elsewhere cannot name the right host and
/// origin at once (no rebinding of names), gets no cookie along (<c>SameSite=Strict</c>), and cannot send JSON without being asked for its origin first.
/// </remarks>
internal sealed class Guard : IDisposable
{
    private const int RequestsASecond = 200;
    private const int Burst = 600;

    private readonly AccessTokens _tokens;
    private readonly TokenBucketRateLimiter _rate = new(new TokenBucketRateLimiterOptions
    {
        TokenLimit = Burst,
        TokensPerPeriod = RequestsASecond / 10,
        ReplenishmentPeriod = TimeSpan.FromMilliseconds(100),
        QueueLimit = 0,
    });

    private HashSet<string> _hosts = new(StringComparer.Ordinal);
    private int _port;

    /// <summary>Takes the tokens that sessions come from.</summary>
    public Guard(AccessTokens tokens) => _tokens = tokens;

    /// <summary>The name of the cookie: cookies are shared by all ports of a host.</summary>
    public string Cookie => FormattableString.Invariant($"channelaudit-review-{_port}");

    /// <summary>Says on which port the server listens.</summary>
    public void ListensOn(int port)
    {
        _port = port;
        _hosts = new HashSet<string>([FormattableString.Invariant($"127.0.0.1:{port}"), FormattableString.Invariant($"localhost:{port}")], StringComparer.Ordinal);
    }

    /// <summary>The status to refuse a request with; 0 when it may go on.</summary>
    public int Refuses(HttpContext context)
    {
        HttpRequest request = context.Request;
        using RateLimitLease lease = _rate.AttemptAcquire();
        return !lease.IsAcquired ? StatusCodes.Status429TooManyRequests
            : !_hosts.Contains(request.Host.Value ?? string.Empty) ? StatusCodes.Status421MisdirectedRequest
            : !IsFromHere(request) ? StatusCodes.Status403Forbidden
            : HttpMethods.IsGet(request.Method) ? 0
            : !HttpMethods.IsPost(request.Method) ? StatusCodes.Status405MethodNotAllowed
            : !string.Equals(request.Headers.Origin, $"http://{request.Host.Value}", StringComparison.Ordinal) ? StatusCodes.Status403Forbidden
            : !IsJson(request) ? StatusCodes.Status415UnsupportedMediaType
            : 0;
    }

    /// <summary>Whether the browser has exchanged an address for a cookie.</summary>
    public bool Knows(HttpContext context) => _tokens.Knows(context.Request.Cookies[Cookie]);

    /// <inheritdoc/>
    public void Dispose() => _rate.Dispose();

    // Another port of this machine is the same site for cookies, but not the same origin. An address that is typed or opened from a terminal says none.
    private static bool IsFromHere(HttpRequest request) => request.Headers["Sec-Fetch-Site"].ToString() is "" or "none" or "same-origin";

    private static bool IsJson(HttpRequest request) => request.ContentType is { } type
        && (type.Equals("application/json", StringComparison.OrdinalIgnoreCase) || type.StartsWith("application/json;", StringComparison.OrdinalIgnoreCase));
}
