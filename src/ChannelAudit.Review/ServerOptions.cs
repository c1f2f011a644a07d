using System.Globalization;
using ChannelAudit.Reports.Reviewing;

namespace ChannelAudit.Review;

/// <summary>What the program was started with; <c>channelaudit review</c> has checked it and made the words.</summary>
/// <param name="Review">How the audit is reviewed.</param>
/// <param name="Port">The port; 0 for any that is free.</param>
/// <param name="FollowsInput">Whether the server ends with its standard input: then it never outlives the program that started it.</param>
internal sealed record ServerOptions(ReviewOptions Review, int Port, bool FollowsInput)
{
    /// <summary>Reads the words.</summary>
    /// <param name="words">The folder, then options with their values.</param>
    /// <exception cref="ChannelAuditException">When they are not understood.</exception>
    public static ServerOptions Of(IReadOnlyList<string> words)
    {
        if (words.Count == 0)
        {
            throw NotUnderstood("nothing");
        }

        ServerOptions options = new(new ReviewOptions { Folder = words[0] }, 0, false);
        for (int i = 1; i < words.Count; i++)
        {
            options = words[i] switch
            {
                "--blind" => options with { Review = options.Review with { IsBlind = true } },
                "--read-only" => options with { Review = options.Review with { IsReadOnly = true } },
                "--follow-input" => options with { FollowsInput = true },
                _ when i + 1 < words.Count => options.With(words[i], words[++i]),
                _ => throw NotUnderstood(words[i]),
            };
        }

        return options;
    }

    private ServerOptions With(string name, string value) => name switch
    {
        "--data" => this with { Review = Review with { DataRoot = value } },
        "--by" => this with { Review = Review with { By = value } },
        "--seed" => this with { Review = Review with { Seed = uint.Parse(value, NumberStyles.None, CultureInfo.InvariantCulture) } },
        "--cells" => this with { Review = Review with { Scope = Enum.Parse<ReviewScope>(value, ignoreCase: true) } },
        "--port" => this with { Port = int.Parse(value, NumberStyles.None, CultureInfo.InvariantCulture) },
        _ => throw NotUnderstood(name),
    };

    private static ChannelAuditException NotUnderstood(string word) => new(
        FaultKind.Usage, $"channelaudit-review: '{word}' is not understood", "start it with channelaudit review DIR, which knows every option");
}
