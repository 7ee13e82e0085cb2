using System.Globalization;
using System.Text;

namespace MonitorSim.Traces;

/// <summary>Says what is wrong with a cell, where, and what would be right: the same for every kind of file.</summary>
internal sealed class CellProblems(ProblemList problems, char mark, bool isText, string? timeColumn, TimeCells? timeCells)
{
    /// <summary>A time that cannot be read, or that is not later than the one of the sample before.</summary>
    /// <param name="row">Its row in the file.</param>
    /// <param name="cell">The cell's text.</param>
    /// <param name="wrong">What it turned out to be, its time and that of the sample before, ns.</param>
    public void Time(long row, ReadOnlySpan<byte> cell, (CellText Found, long Time, long Before) wrong)
    {
        var (found, time, before) = wrong;
        var text = Text(cell);
        var kind = found switch
        {
            CellText.Missing => ProblemKind.TimeMissing,
            CellText.NotANumber or CellText.OutOfRange => ProblemKind.TimeUnreadable,
            _ => time == before ? ProblemKind.TimeRepeated : ProblemKind.TimeBackward,
        };
        problems.Add(kind, row, timeColumn, () => kind switch
        {
            ProblemKind.TimeMissing => ("the time is missing", timeCells!.Expected),
            ProblemKind.TimeUnreadable when found == CellText.OutOfRange => ($"the time '{text}' is beyond what a recording can last (292 years)", timeCells!.Expected),
            ProblemKind.TimeUnreadable => ($"'{text}' is no time", timeCells!.Expected),
            ProblemKind.TimeRepeated => ($"the time '{text}' repeats the one of the sample before, to the nanosecond", "each sample needs a later time than the one before"),
            _ => ($"the time '{text}' runs backwards, {Seconds(before - time)} s before the sample above", "each sample needs a later time than the one before"),
        });
    }

    /// <summary>A cell of a column of numbers that is none.</summary>
    /// <param name="row">Its row in the file.</param>
    /// <param name="cell">The cell's text.</param>
    /// <param name="column">The column's name.</param>
    /// <param name="found">What it turned out to be.</param>
    public void Number(long row, ReadOnlySpan<byte> cell, string column, CellText found)
    {
        var text = Text(cell);
        if (found == CellText.OutOfRange)
        {
            problems.Add(ProblemKind.OutOfRange, row, column, () =>
                ($"'{Shortened(text)}' is beyond what a double holds", "give a number between 1e-323 and 1.7e308 in size, or 0"));
            return;
        }

        var other = mark == ',' ? '.' : ',';
        var fix = ExactDecimal.Parse(Encoding.UTF8.GetBytes(text), (byte)other) is not null
            ? $"write {text.Replace(other, mark)}{(isText ? $", or give \"decimal\": \"{other}\" in the plan's trace" : "")}"
            : $"write a number such as 12{mark}5, or leave the cell empty where the value is missing";
        problems.Add(ProblemKind.NotANumber, row, column, () => ($"'{Shortened(text)}' is not a number", fix));
    }

    /// <summary>A cell whose bytes are no text.</summary>
    /// <param name="row">Its row in the file.</param>
    /// <param name="cell">The cell's bytes.</param>
    /// <param name="column">The column's name.</param>
    public void NotText(long row, ReadOnlySpan<byte> cell, string column)
    {
        var bytes = Convert.ToHexString(cell[..Math.Min(16, cell.Length)]);
        problems.Add(ProblemKind.NotText, row, column, () =>
            ($"the cell's bytes {bytes} are no UTF-8", isText ? "give \"encoding\": \"windows-1252\", or what the file is written in, in the plan's trace" : "write texts in UTF-8"));
    }

    /// <summary>A cell's text as it stands in messages.</summary>
    public static string Text(ReadOnlySpan<byte> cell) => Encoding.UTF8.GetString(cell).Trim();

    /// <summary>The beginning of a long text.</summary>
    public static string Shortened(string cell) => cell.Length <= 40 ? cell : cell[..37] + "...";

    private static string Seconds(long nanoseconds) => (nanoseconds / 1_000_000_000m).ToString("0.#########", CultureInfo.InvariantCulture);
}
