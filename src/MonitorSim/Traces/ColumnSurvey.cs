namespace MonitorSim.Traces;

/// <summary>What is in a column.</summary>
public sealed record ColumnSurvey
{
    private const int MostWords = 8;

    private ColumnSurvey() { }

    /// <summary>Its header.</summary>
    public required string Name { get; init; }

    /// <summary>Numbers or words.</summary>
    public required ColumnKind Kind { get; init; }

    /// <summary>Its unit, stated (units row, brackets in the header) or guessed from the name; null where nothing says it.</summary>
    public required string? Unit { get; init; }

    /// <summary>Whether the unit is only guessed, from a name such as <c>qd1_rad_s</c>.</summary>
    public required bool UnitIsGuess { get; init; }

    /// <summary>How many cells are empty.</summary>
    public required int Missing { get; init; }

    /// <summary>The smallest number; null for words, or where every cell is empty.</summary>
    public required double? Smallest { get; init; }

    /// <summary>The largest number; null for words, or where every cell is empty.</summary>
    public required double? Largest { get; init; }

    /// <summary>The first distinct words, at most eight; none for numbers.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>How many distinct words there are; 0 for numbers.</summary>
    public required int DistinctWords { get; init; }

    /// <summary>Whether it can serve as a digital input: every cell is 0 or 1, true or false, on or off, or empty.</summary>
    public required bool IsSwitch { get; init; }

    internal static ColumnSurvey Of(Column column) => column switch
    {
        NumberColumn numbers => OfNumbers(numbers),
        WordColumn words => OfWords(words),
        _ => throw new ArgumentException("a column is of numbers or of words", nameof(column)),
    };

    private static ColumnSurvey OfNumbers(NumberColumn column)
    {
        double smallest = double.PositiveInfinity, largest = double.NegativeInfinity;
        var missing = 0;
        var onlyBits = true;
        foreach (var value in column.Values)
        {
            if (double.IsNaN(value))
            {
                missing++;
                continue;
            }

            smallest = Math.Min(smallest, value);
            largest = Math.Max(largest, value);
            onlyBits &= value is 0 or 1;
        }

        var any = missing < column.Count;
        var guessed = column.Unit is null ? HeaderText.Guessed(column.Name) : null;
        return new ColumnSurvey
        {
            Name = column.Name,
            Kind = ColumnKind.Number,
            Unit = column.Unit ?? guessed,
            UnitIsGuess = guessed is not null,
            Missing = missing,
            Smallest = any ? smallest : null,
            Largest = any ? largest : null,
            Words = [],
            DistinctWords = 0,
            IsSwitch = any && onlyBits,
        };
    }

    private static ColumnSurvey OfWords(WordColumn column)
    {
        var missing = 0;
        foreach (var code in column.Codes)
        {
            if (code < 0) missing++;
        }

        return new ColumnSurvey
        {
            Name = column.Name,
            Kind = ColumnKind.Word,
            Unit = null,
            UnitIsGuess = false,
            Missing = missing,
            Smallest = null,
            Largest = null,
            Words = [.. column.Words.Take(MostWords)],
            DistinctWords = column.Words.Count,
            IsSwitch = column.Words.Count > 0 && column.Words.All(w => w is "0" or "1" || HeaderText.IsSwitchWord(w)),
        };
    }
}
