using System.Globalization;
using System.Text;

namespace MonitorSim.Cli;

/// <summary>Tables as CSV files for spreadsheets. Text that a spreadsheet would take for a formula is written with a leading apostrophe.</summary>
internal static class SheetCsv
{
    /// <summary>Writes each table as a file of its name.</summary>
    public static void Write(Terminal terminal, string folder, IReadOnlyList<Sheet> sheets)
    {
        foreach (var sheet in sheets)
        {
            terminal.Write(Path.Combine(folder, sheet.Name + ".csv"), stream =>
            {
                using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
                writer.WriteLine(string.Join(',', sheet.Columns.Select(column => column.Name)));
                foreach (var row in sheet.Rows) writer.WriteLine(string.Join(',', row.Select(Cell)));
            });
        }
    }

    internal static string Cell(object? value)
    {
        if (value is not string text) return value is bool flag ? flag ? "true" : "false" : Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        if (text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal)) text = "'" + text;
        return text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
    }
}
