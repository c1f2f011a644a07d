using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace ChannelAudit.Review;

/// <summary>Who may use the page: each printed address works once and leaves a cookie; a browser without one gets nothing.</summary>
internal sealed class AccessTokens
{
    private const int Bytes = 32;
    private const int MostSessions = 32;

    private readonly Lock _gate = new();
    private string _token = Fresh();
    private ImmutableArray<string> _sessions = [];

    /// <summary>The token of the next address.</summary>
    public string Next
    {
        get
        {
            lock (_gate)
            {
                return _token;
            }
        }
    }

    /// <summary>Takes a token for a session; the token is dead then.</summary>
    /// <returns>The session's secret; null when the token is none.</returns>
    public string? Exchange(string token)
    {
        lock (_gate)
        {
            if (!IsSame(token, _token))
            {
                return null;
            }

            _token = Fresh();
            string session = Fresh();
            _sessions = [.. _sessions.TakeLast(MostSessions - 1), session];
            return session;
        }
    }

    /// <summary>Whether a session was handed out.</summary>
    public bool Knows(string? session)
    {
        ImmutableArray<string> known;
        lock (_gate)
        {
            known = _sessions;
        }

        return session is not null && known.Aggregate(false, (isKnown, one) => isKnown | IsSame(session, one));
    }

    private static bool IsSame(string one, string other) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));

    private static string Fresh() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));
}
