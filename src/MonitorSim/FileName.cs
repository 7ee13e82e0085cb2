namespace MonitorSim;

/// <summary>File names made of names that a plan or a recording gives: they stay in their folder, on every system.</summary>
internal static class FileName
{
    /// <summary>With what is put before and behind it, a name stays below what file systems allow, 255 bytes.</summary>
    private const int LongestInBytes = 150;

    // To Windows these are devices, whatever ending they have.
    private static readonly HashSet<string> Devices = new(
        [.. new[] { "CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$" }, .. "0123456789\u00B9\u00B2\u00B3".SelectMany(number => new[] { $"COM{number}", $"LPT{number}" })], StringComparer.OrdinalIgnoreCase);

    /// <summary>A name as a file name: letters, digits, - and _ stay as they are.</summary>
    public static string Of(string name) => Whole(string.Concat(name.Select(letter => char.IsLetterOrDigit(letter) || letter is '-' or '_' ? letter : '_')));

    /// <summary>A file name without its ending, as a name for what is made of that file: no folder, no device.</summary>
    public static string OfStem(string path) => Whole(Path.GetFileNameWithoutExtension(path).TrimEnd('.', ' '));

    /// <summary>A name that none has yet: "a b" and "a_b" must not overwrite each other, nor "X" and "x" where case does not count.</summary>
    /// <param name="name">What it should be.</param>
    /// <param name="taken">Those that are taken; this one too from now on. It does not tell upper from lower case.</param>
    public static string Free(string name, ISet<string> taken)
    {
        var free = name;
        for (var number = 2; !taken.Add(free); number++) free = FormattableString.Invariant($"{name}-{number}");
        return free;
    }

    private static string Whole(string name)
    {
        if (name.Length == 0) return "_";
        if (Devices.Contains(name.Split('.')[0].TrimEnd())) return name + "_";
        var (length, bytes) = (0, 0);
        foreach (var rune in name.EnumerateRunes())
        {
            if ((bytes += rune.Utf8SequenceLength) > LongestInBytes) return name[..length].TrimEnd('.', ' ');
            length += rune.Utf16SequenceLength;
        }

        return name;
    }
}
