using System.Text;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>Short ways to read text in tests.</summary>
internal static class Reading
{
    public static Trace Of(string text, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null) =>
        Of(Encoding.UTF8.GetBytes(text), dialect, wanted);

    public static Trace Of(byte[] bytes, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null) =>
        TraceReader.Read(new MemoryStream(bytes), "run.csv", dialect, wanted);

    public static DialectFound Found(string text, Dialect? dialect = null)
    {
        TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), "run.csv", dialect, null, out var found);
        return found;
    }

    /// <summary>The problems that reading it gives, one text each.</summary>
    public static string[] Problems(string text, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null) =>
        Problems(Encoding.UTF8.GetBytes(text), dialect, wanted);

    public static string[] Problems(byte[] bytes, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null) =>
        [.. Assert.Throws<InputException>(() => Of(bytes, dialect, wanted)).Problems.Select(p => p.ToString())];

    public static double[] Numbers(this Trace trace, string column) => Assert.IsType<NumberColumn>(trace.Find(column)).Values.ToArray();

    /// <summary>One word a sample; "(missing)" where the cell is empty.</summary>
    public static string[] Words(this Trace trace, string column)
    {
        var words = Assert.IsType<WordColumn>(trace.Find(column));
        return [.. words.Codes.ToArray().Select(c => c < 0 ? "(missing)" : words.Words[c])];
    }

    public static ColumnRequest Number(string name) => new(name, ColumnKind.Number);

    public static ColumnRequest Word(string name) => new(name, ColumnKind.Word);
}
