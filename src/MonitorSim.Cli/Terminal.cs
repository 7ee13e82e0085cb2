namespace MonitorSim.Cli;

/// <summary>Where a command writes: results on one side, errors on the other.</summary>
/// <param name="Out">Text for people.</param>
/// <param name="Error">Messages, one a line.</param>
/// <param name="OpenOut">Opens standard output for bytes, for files named <c>-</c>.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, Func<Stream> OpenOut)
{
    /// <summary>Whether a person watches standard error, so that progress may show there.</summary>
    public bool IsErrorTerminal { get; init; }

    /// <summary>The same without text for people.</summary>
    public Terminal Quiet() => this with { Out = TextWriter.Null };

    /// <summary>Writes a file aside and renames it when it is whole; <c>-</c> is standard output.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="write">Writes it.</param>
    /// <param name="endsItsLines">Whether its last line ends; else standard output gets that end.</param>
    public void Write(string path, Action<Stream> write, bool endsItsLines = false)
    {
        if (path == "-")
        {
            Out.Flush();
            using var stream = OpenOut();
            write(stream);
            if (!endsItsLines) stream.Write("\n"u8);
            return;
        }

        using var file = new AsideFile(path);
        write(file.Stream);
        file.Complete();
    }
}
