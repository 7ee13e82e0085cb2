using System.Text;
using Fractions;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Writes a vector's samples as the plan of all vectors reads them: semicolons, points, times in milliseconds.</summary>
internal static class VectorCsv
{
    public static string Write(Plan plan, Script script)
    {
        var text = new StringBuilder();
        var words = script.Settings[0].Words.Keys.ToList();
        var columns = script.Columns.ToList();
        text.AppendJoin(';', new[] { plan.Trace.Time!.Column }.Concat(columns.Select(column => column.Name)).Concat(words).Select(Quoted)).Append('\n');
        for (var k = 0; k < script.Count; k++)
        {
            text.Append(NumberText.Exact(new Fraction(script.Times[k], 1_000_000)));
            foreach (var column in columns) text.Append(';').Append(NumberText.Exact(column[k]));
            foreach (var word in words) text.Append(';').Append(Quoted(script.Settings[k].Words[word]));
            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Says before the work that a plan's columns or words cannot be written.</summary>
    /// <exception cref="InputException">A spreadsheet would take one for a formula.</exception>
    public static void Require(Plan plan)
    {
        foreach (var column in PlannedTrace.Columns(plan)) FormulaText.Refuse("plan", "column", column.Name);
        foreach (var (name, signal) in plan.Signals)
            if (signal.EqualTo is { } word) FormulaText.Refuse($"signals.{name}", "word", word);
    }

    private static string Quoted(string cell) => cell.AsSpan().IndexOfAny(";\"\r\n") < 0 && cell == cell.Trim() ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
