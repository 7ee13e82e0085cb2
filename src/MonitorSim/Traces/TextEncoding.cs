using System.Text;

namespace MonitorSim.Traces;

/// <summary>The text encoding of a recording: by byte order mark, by the pattern of its bytes, or as given.</summary>
internal sealed record TextEncoding(string Name, Encoding Encoding, int MarkLength)
{
    /// <summary>Whether the bytes can be read as they are.</summary>
    public bool IsUtf8 => Name == "utf-8";

    /// <summary>Works it out from the file's first bytes.</summary>
    /// <param name="head">The first bytes.</param>
    /// <param name="whole">Whether these are all bytes there are; else the last character may be cut.</param>
    public static TextEncoding Of(ReadOnlySpan<byte> head, bool whole)
    {
        if (Marked(head) is { } marked) return marked;
        if (WideOrder(head) is { } bigEndian) return Wide(bigEndian, 0);
        return IsValid(head, whole) ? Utf8(0) : new TextEncoding("windows-1252", CodePage("windows-1252")!, 0);
    }

    /// <summary>The encoding of that name.</summary>
    /// <exception cref="InputException">There is none of that name.</exception>
    public static TextEncoding Named(string name, ReadOnlySpan<byte> head, string file)
    {
        // A mark of the same encoding is no part of the text.
        var key = name.Trim().ToLowerInvariant();
        var marked = Marked(head);
        switch (key)
        {
            case "utf-8" or "utf8" or "ascii" or "us-ascii":
                return Utf8(marked is { IsUtf8: true } ? 3 : 0);
            case "utf-16" or "utf16" or "unicode":
                return marked is { Name: "utf-16be" } ? Wide(true, 2) : Wide(false, marked is { Name: "utf-16le" } ? 2 : 0);
            case "utf-16le" or "utf16le":
                return Wide(false, marked is { Name: "utf-16le" } ? 2 : 0);
            case "utf-16be" or "utf16be":
                return Wide(true, marked is { Name: "utf-16be" } ? 2 : 0);
            case "latin-1" or "latin1" or "iso-8859-1":
                return new TextEncoding("latin-1", Encoding.Latin1, 0);
            default:
                return CodePage(key) is { } known
                    ? new TextEncoding(key, known, 0)
                    : throw new InputException(new Problem(file, $"the encoding '{name}' is not known",
                        "would do: utf-8, utf-16le, utf-16be, latin-1, windows-1252"));
        }
    }

    private static TextEncoding? Marked(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) return Utf8(3);
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0])) return new TextEncoding("utf-32", new UTF32Encoding(false, false), 4);
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE])) return Wide(false, 2);
        if (head.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])) return Wide(true, 2);
        return null;
    }

    private static TextEncoding Utf8(int mark) => new("utf-8", new UTF8Encoding(false), mark);

    private static TextEncoding Wide(bool bigEndian, int mark) =>
        new(bigEndian ? "utf-16be" : "utf-16le", new UnicodeEncoding(bigEndian, false), mark);

    // Digits and separators have a zero byte in UTF-16, always on the same side.
    private static bool? WideOrder(ReadOnlySpan<byte> head)
    {
        var look = head[..Math.Min(head.Length & ~1, 4096)];
        if (look.Length < 4) return null;
        int even = 0, odd = 0;
        for (var i = 0; i < look.Length; i += 2)
        {
            if (look[i] == 0) even++;
            if (look[i + 1] == 0) odd++;
        }

        var enough = look.Length / 2 * 8 / 10;
        if (even > enough && odd == 0) return true;
        if (odd > enough && even == 0) return false;
        return null;
    }

    private static bool IsValid(ReadOnlySpan<byte> head, bool whole)
    {
        if (Utf8Ok(head)) return true;
        if (whole) return false;
        for (var cut = 1; cut <= 3 && cut < head.Length; cut++)
        {
            if (Utf8Ok(head[..^cut])) return true;
        }

        return false;
    }

    private static bool Utf8Ok(ReadOnlySpan<byte> bytes) => System.Text.Unicode.Utf8.IsValid(bytes);

    // Code pages are not registered for the whole process: that would be felt by others.
    private static Encoding? CodePage(string name)
    {
        try
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
