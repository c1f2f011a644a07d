using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Manual;

/// <summary>Explains reason codes: a list of all, and the page of each.</summary>
public static partial class ReasonManual
{
    private const int Width = 100;
    private const string NotInThisVersion = "not assessed in this version";

    /// <summary>Everything that can be explained: codes that change a verdict, those that inform, and pages about something else.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. ReasonCode.All.Concat(ReasonWords.All.Select(word => word.Code)).Concat(ManualText.Names).Distinct(StringComparer.Ordinal)];

    /// <summary>All reason codes with one line each, as the README says them.</summary>
    public static string List()
    {
        (string Code, string Line)[] lines = [.. ReasonCode.All.Select(code => (code, LineOf(code)))];
        int column = lines.Max(line => line.Code.Length) + 2;
        StringBuilder text = new("Reasons for a verdict:\n");
        foreach ((string code, string line) in lines)
        {
            ImmutableArray<string> wrapped = WrappedText.Lines(line, Width - column - 2);
            text.Append("  ").Append(code.PadRight(column)).Append(string.Join("\n" + new string(' ', column + 2), wrapped)).Append('\n');
        }

        string[] others = [.. Names.Where(name => !ReasonCode.All.Contains(name, StringComparer.Ordinal))];
        text.Append("\nAlso explained: ");
        text.AppendJoin('\n', WrappedText.Lines(string.Join(", ", others), Width - 16)).Append('\n');
        return text.ToString();
    }

    /// <summary>The page of a name as plain text, with the caution where its advice touches skin.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    public static string Of(string name)
    {
        StringBuilder text = new(ManualText.Names.Contains(name, StringComparer.Ordinal) ? PlainPage.Of(ManualText.Page(name), Width) : WithoutPage(name));
        if (ReasonWords.For(name).TouchesSkin)
        {
            text.Append("\nSafety\n------\n").AppendJoin('\n', WrappedText.Lines(ReasonWords.Caution, Width)).Append('\n');
        }

        return text.ToString();
    }

    // "bad-trials", what only informs, and what this version does not assess have no page of their own.
    private static string WithoutPage(string name)
    {
        ReasonWord word = ReasonWords.For(name);
        string title = $"{char.ToUpperInvariant(word.Name[0])}{word.Name[1..]}: {name}";
        return string.Join(
            '\n',
            [
                title,
                new string('=', title.Length),
                string.Empty,
                .. WrappedText.Lines(Standing(name), Width),
                string.Empty,
                .. WrappedText.Lines($"What to do: {word.WhatToDo}", Width),
                .. ScoringAdvice.For(word.Code) is { } scoring ? WrappedText.Lines($"When scoring: {scoring}", Width) : [],
            ]) + "\n";
    }

    private static string Standing(string name)
    {
        if (string.Equals(name, DefaultCriteria.BadTrials, StringComparison.Ordinal))
        {
            return "The reason of a channel of which too many trials are bad. Its limits: channelaudit criteria show.";
        }

        if (!ReasonCode.All.Contains(name, StringComparer.Ordinal))
        {
            return "Information: it stands beside the findings and never changes a verdict.";
        }

        return SeenInReadme(name) is { } seen ? $"Seen: {seen}." : $"This reason is {NotInThisVersion}: a pass says nothing about it.";
    }

    private static string LineOf(string code) => SeenInReadme(code) ?? $"{ReasonWords.For(code).Name}: {NotInThisVersion}";

    private static string? SeenInReadme(string code) => ReasonRow().Matches(ManualText.Readme)
        .Where(row => string.Equals(row.Groups["code"].Value, code, StringComparison.Ordinal))
        .Select(row => InlineText.Of(row.Groups["seen"].Value))
        .FirstOrDefault();

    // The README's table of reasons: code, seen, page.
    [GeneratedRegex(
        @"^\| `(?<code>[a-z-]+)` \| (?<seen>[^|]+) \| [^|]*\|$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex ReasonRow();
}
