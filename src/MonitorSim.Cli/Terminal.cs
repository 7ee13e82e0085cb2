namespace MonitorSim.Cli;

/// <summary>Where a command writes, results on one side, errors on the other, and who tells it to stop.</summary>
/// <param name="Out">Text for people.</param>
/// <param name="Error">Messages, one a line.</param>
/// <param name="OpenOut">Opens standard output for bytes, for files named <c>-</c>.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, Func<Stream> OpenOut)
{
    /// <summary>Whether a person watches standard error, so that progress may show there.</summary>
    public bool IsErrorTerminal { get; init; }

    /// <summary>Whoever sits there wants it to end.</summary>
    public CancellationToken Cancel { get; init; }

    /// <summary>The same without text for people.</summary>
    public Terminal Quiet() => this with { Out = TextWriter.Null };

    /// <summary>Writes a file aside and renames it when it is whole; <c>-</c> is standard output.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="write">Writes it.</param>
    /// <param name="endsItsLines">Whether its last line ends; else standard output gets that end.</param>
    /// <exception cref="InputException">It cannot be written there.</exception>
    public void Write(string path, Action<Stream> write, bool endsItsLines = false)
    {
        if (path == "-")
        {
            Out.Flush();
            using var stream = new OutputStream(OpenOut(), "standard output", Cancel);
            write(stream);
            if (!endsItsLines) stream.Write("\n"u8);
            return;
        }

        using var file = new OutputFile(path, Cancel);
        write(file.Stream);
        file.Complete();
    }

    /// <summary>Draws pictures into a folder; gives their paths.</summary>
    /// <exception cref="InputException">They cannot be written there.</exception>
    public IReadOnlyList<string> Pictures(string folder, Func<string, IEnumerable<string>> draw)
    {
        Writing.Require(folder, "name a folder");
        return Writing.To<IReadOnlyList<string>>(folder, () => [.. draw(folder)]);
    }
}
