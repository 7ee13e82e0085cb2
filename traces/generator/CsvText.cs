using System.Globalization;
using System.Text;
using MonitorSim.Traces;

namespace MonitorSim.Demo;

/// <summary>A recording as CSV: a row of names, a row of units, then one row a sample.</summary>
public static class CsvText
{
    /// <summary>The text, the same in every culture.</summary>
    public static string Of(Trace trace)
    {
        var text = new StringBuilder();
        text.Append("time,").AppendJoin(',', trace.Columns.Select(column => column.Name)).Append('\n');
        text.Append("s,").AppendJoin(',', trace.Columns.Select(column => column.Unit ?? "")).Append('\n');
        for (var k = 0; k < trace.Count; k++)
        {
            text.Append((trace.Times[k] / 1_000_000_000m).ToString("0.#########", CultureInfo.InvariantCulture));
            foreach (var column in trace.Columns) text.Append(',').Append(Cell(column, k));
            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Cell(Column column, int sample) =>
        column.IsMissing(sample) ? "" : column is WordColumn words ? words.Words[words.Codes[sample]] : ((NumberColumn)column).Values[sample].ToString("R", CultureInfo.InvariantCulture);
}
