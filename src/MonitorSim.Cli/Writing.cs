namespace MonitorSim.Cli;

/// <summary>Says what went wrong where something is written: which file, what happened, what to do.</summary>
internal static class Writing
{
    // Numbers of the operating systems: Linux and macOS give them as they are, Windows within a result code.
    private static readonly int[] Full = [28, 69, 122, unchecked((int)0x80070070), unchecked((int)0x80070027)];
    private static readonly int[] ReadOnly = [30, unchecked((int)0x80070013)];

    /// <exception cref="InputException">It is no path.</exception>
    public static void Require(string path, string advice)
    {
        if (string.IsNullOrWhiteSpace(path)) throw new InputException(new Problem("output", "the path is empty", advice));
        if (path.Contains('\0', StringComparison.Ordinal)) throw new InputException(new Problem("output", "the path holds a NUL character", advice));
    }

    /// <summary>Does what writes to a path.</summary>
    /// <exception cref="InputException">It could not be done.</exception>
    public static void To(string path, Action write) => To(path, () =>
    {
        write();
        return 0;
    });

    /// <summary>Does what writes to a path, and gives what comes of it.</summary>
    /// <exception cref="InputException">It could not be done.</exception>
    public static T To<T>(string path, Func<T> write)
    {
        try
        {
            return write();
        }
        catch (Exception e) when (IsFailure(e))
        {
            throw Failed(path, e);
        }
    }

    /// <summary>Whether an exception is one of those with which writing fails.</summary>
    public static bool IsFailure(Exception e) => e is IOException or UnauthorizedAccessException;

    /// <summary>What to throw where writing failed.</summary>
    public static InputException Failed(string path, Exception e) => new(Problem(path, e));

    /// <summary>What a failure means for who runs the command.</summary>
    public static Problem Problem(string path, Exception e)
    {
        var (what, fix) = e switch
        {
            PathTooLongException => ("the path or a name in it is too long", "choose a shorter one"),
            UnauthorizedAccessException => ("it is not permitted to write there", "choose another place, or change the permissions of this one"),
            _ when Full.Contains(e.HResult) => ("the disk is full", "free some space, or write to another disk"),
            _ when ReadOnly.Contains(e.HResult) => ("the disk is read-only", "write to another disk"),
            _ when InTheWay(path) is { } file => ($"'{file}' is no folder", "choose another place"),
            _ => ($"it cannot be written: {string.Join(' ', e.Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.')}", "choose another place"),
        };
        return new(path, what, fix);
    }

    private static string? InTheWay(string path)
    {
        for (var above = Path.GetFullPath(path); above is not null; above = Path.GetDirectoryName(above))
            if (File.Exists(above)) return above;
        return null;
    }
}
