using System.Buffers;
using System.Globalization;
using System.Text;

namespace MonitorSim;

/// <summary>Text for people that holds what a file says: names in it may hold line ends, which would make two messages of one, and what terminals take for commands.</summary>
internal static class PrintableText
{
    // Those of ASCII and of Latin 1, and the two ends of lines and paragraphs.
    private static readonly SearchValues<char> Controls =
        SearchValues.Create([.. Enumerable.Range(0, 0xA0).Select(code => (char)code).Where(char.IsControl), '\u2028', '\u2029']);

    /// <summary>The text with its control characters as JSON writes them, such as <c>\n</c> and <c>\u001b</c>.</summary>
    public static string Of(string text)
    {
        if (!text.AsSpan().ContainsAny(Controls)) return text;
        var printable = new StringBuilder(text.Length + 8);
        foreach (var letter in text)
        {
            _ = letter switch
            {
                '\n' => printable.Append("\\n"),
                '\r' => printable.Append("\\r"),
                '\t' => printable.Append("\\t"),
                _ when Controls.Contains(letter) => printable.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}"),
                _ => printable.Append(letter),
            };
        }

        return printable.ToString();
    }
}
