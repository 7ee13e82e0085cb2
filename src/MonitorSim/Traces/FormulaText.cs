namespace MonitorSim.Traces;

/// <summary>Texts that a spreadsheet would take for a formula. Recordings are not written with them: marked, as by an apostrophe, they would be other names to all else that
/// reads the file.</summary>
internal static class FormulaText
{
    private const string Marks = "=+-@";

    /// <summary>Whether a spreadsheet would take a cell for a formula. Numbers are none, nor is a mark alone.</summary>
    public static bool Is(string cell)
    {
        var text = cell.AsSpan().TrimStart();
        return text.Length > 1 && Marks.Contains(text[0], StringComparison.Ordinal) && !(text[0] is '+' or '-' && !text[1..].ContainsAnyExcept("0123456789.,eE"));
    }

    /// <summary>Refuses a cell that a spreadsheet would take for a formula.</summary>
    /// <param name="place">Where it would stand.</param>
    /// <param name="what">What it is, such as <c>column</c>.</param>
    /// <param name="cell">The cell.</param>
    /// <exception cref="InputException">It would be a formula.</exception>
    public static void Refuse(string place, string what, string cell)
    {
        if (Is(cell)) throw new InputException(new Problem(place, $"the {what} '{cell}' begins as a formula does, and a spreadsheet that opens the recording would run it", "let it begin with a letter"));
    }
}
