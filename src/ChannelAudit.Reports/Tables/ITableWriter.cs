using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>Takes a table cell by cell, so that the same rows can be written as text and as a typed file.</summary>
internal interface ITableWriter : IDisposable
{
    /// <summary>A word of our own: a name or a code without tabs, quotes or line ends.</summary>
    void Word(string word);

    /// <summary>Text that came from a file, or none.</summary>
    void Label(string? text);

    /// <summary>A number, or none.</summary>
    void Number(double? value);

    /// <summary>A whole number, and behind it a word that belongs to it (<c>3:baseline</c>).</summary>
    void Count(int value, string suffix = "");

    /// <summary>A verdict or a grade, or none.</summary>
    void Grade(Grade? grade);

    /// <summary>Codes joined by <c>;</c>, each once, or none.</summary>
    void Codes(IEnumerable<string> codes);

    /// <summary>Ends the row.</summary>
    /// <exception cref="InvalidOperationException">When it has not as many cells as the table has columns.</exception>
    void EndRow();

    /// <summary>Writes what is still held; no row comes after it.</summary>
    void End();
}
