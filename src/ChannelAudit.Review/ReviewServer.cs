using System.Diagnostics.CodeAnalysis;
using System.Net;
using System.Net.Sockets;
using ChannelAudit.Reports.Reviewing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using BadHttpRequestException = Microsoft.AspNetCore.Http.BadHttpRequestException;

namespace ChannelAudit.Review;

/// <summary>The local page: a server on the loopback that reads nothing but what it was given, and takes no setting from files or the environment.</summary>
internal sealed class ReviewServer : IAsyncDisposable
{
    private const int MostBodyBytes = 16 << 10;
    private const int MostConnections = 64;

    private readonly WebApplication _web;
    private readonly AccessTokens _tokens = new();
    private readonly Guard _guard;
    private readonly RecordingShelf _shelf;
    private readonly Reading _reading;
    private readonly Deciding _deciding;
    private readonly ReviewBook _book;

    private ReviewServer(ReviewBook book, int port, TimeProvider clock, Func<CancellationToken, bool> update)
    {
        _book = book;
        _guard = new Guard(_tokens);
        _shelf = new RecordingShelf(book.Audit, book.Options.DataRoot);
        Pictures = new CellPictures(book, _shelf);
        CellDesk cells = new(book, _shelf, Pictures);
        _reading = new Reading(book, cells, Pictures);
        _deciding = new Deciding(book, new ReviewDesk(book, clock), cells, update);

        // The empty builder reads no settings: a file in the folder that one stands in could open the server to the network.
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(IPAddress.Loopback, port, listen => listen.Protocols = HttpProtocols.Http1);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Limits.MaxRequestHeadersTotalSize = MostBodyBytes;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        });
        _web = builder.Build();
        _web.Run(AnswerGuarded);
    }

    /// <summary>Called with a fresh address whenever one was used.</summary>
    public Action<string> OnAddress { get; init; } = _ => { };

    /// <summary>Makes the pictures.</summary>
    public CellPictures Pictures { get; }

    /// <summary>Host and port, <c>http://127.0.0.1:PORT</c>.</summary>
    public string Origin { get; private set; } = string.Empty;

    /// <summary>An address that works once.</summary>
    public string Address => $"{Origin}/?token={_tokens.Next}";

    /// <summary>Starts to listen.</summary>
    /// <param name="book">The cells.</param>
    /// <param name="port">The port; 0 for any that is free.</param>
    /// <param name="clock">Says when something is decided.</param>
    /// <param name="update">Brings tables and pages up to date.</param>
    /// <param name="onAddress">Called with each address.</param>
    /// <param name="cancel">Ends the start.</param>
    /// <exception cref="ChannelAuditException">When the port is taken.</exception>
    public static async Task<ReviewServer> Start(
        ReviewBook book, int port, TimeProvider clock, Func<CancellationToken, bool> update, Action<string> onAddress, CancellationToken cancel)
    {
        ReviewServer server = new(book, port, clock, update) { OnAddress = onAddress };
        try
        {
            await server._web.StartAsync(cancel);
        }
        catch (Exception fault) when (fault is IOException or SocketException)
        {
            // Taken, or one that only an administrator may open.
            await server.DisposeAsync();
            throw ServerErrors.PortTaken(port, fault);
        }

        Uri bound = new(server._web.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        server._guard.ListensOn(bound.Port);
        server.Origin = FormattableString.Invariant($"http://127.0.0.1:{bound.Port}");
        onAddress(server.Address);
        return server;
    }

    /// <summary>Waits until it is told to end, by Ctrl-C or by the token, and ends.</summary>
    public Task Wait(CancellationToken cancel) => _web.WaitForShutdownAsync(cancel);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _web.DisposeAsync();
        _reading.Dispose();
        _shelf.Dispose();
        _guard.Dispose();
    }

    private async Task AnswerGuarded(HttpContext context)
    {
        Answer.Shield(context.Response);
        try
        {
            int refused = _guard.Refuses(context);
            await (refused == 0
                ? Route(context)
                : Answer.Fault(context, refused, "this request was refused", "use the address that the terminal shows, in one browser window"));
        }
        catch (ChannelAuditException fault)
        {
            // A message names recordings, channels and places, which a blind person shall not know.
            bool isTold = !_book.Options.IsBlind || HttpMethods.IsPost(context.Request.Method);
            (string error, string hint) = isTold ? (fault.Message, fault.Hint) : ("this cell cannot be shown", "go on with the next, and tell who set this review up");
            await Answer.Fault(context, StatusCodes.Status422UnprocessableEntity, error, hint);
        }
        catch (BadHttpRequestException fault)
        {
            await Answer.Fault(context, fault.StatusCode, "this request was refused", "reload the page");
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Abort();
        }
    }

    private Task Route(HttpContext context)
    {
        bool isPost = HttpMethods.IsPost(context.Request.Method);
        string path = context.Request.Path.Value ?? string.Empty;
        if (path is "/" && !isPost && context.Request.Query["token"] is [{ } token])
        {
            return Exchange(context, token);
        }

        if (!_guard.Knows(context))
        {
            return Answer.Fault(context, StatusCodes.Status403Forbidden, "this browser has no key to the page", "open the address that the terminal shows; each works once");
        }

        return (isPost, path) switch
        {
            (false, "/state") => _reading.State(context),
            (false, "/cell") => _reading.Cell(context),
            (false, "/ribbon") => _reading.Ribbon(context),
            (false, "/picture") => _reading.Picture(context),
            (false, "/sheet") => _reading.Sheet(context),
            (true, "/decide") => _deciding.Decide(context),
            (true, "/withdraw") => _deciding.Withdraw(context),
            (true, "/tables") => _deciding.Tables(context),
            (false, _) when PageFiles.At(path) is { } file => Answer.Bytes(context, file.Bytes, file.Type),
            _ => Reading.NotFound(context),
        };
    }

    // The address is exchanged for a cookie that no script can read and no other page is given; the token is dead then, and a fresh address is shown.
    [SuppressMessage("Security", "CA5382:Use Secure Cookies In ASP.NET Core", Justification = "The loopback has no TLS; not every browser sends a secure cookie there.")]
    [SuppressMessage("Security", "CA5383:Ensure Use Secure Cookies In ASP.NET Core", Justification = "The same.")]
    private Task Exchange(HttpContext context, string token)
    {
        if (_tokens.Exchange(token) is not { } session)
        {
            // A window that was closed and opened again from the terminal: this browser was let in before.
            if (_guard.Knows(context))
            {
                context.Response.Redirect("/");
                return Task.CompletedTask;
            }

            return Answer.Fault(context, StatusCodes.Status403Forbidden, "this address was used before", "open the latest address that the terminal shows; each works once");
        }

        context.Response.Cookies.Append(_guard.Cookie, session, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        context.Response.Redirect("/");
        OnAddress(Address);
        return Task.CompletedTask;
    }
}
