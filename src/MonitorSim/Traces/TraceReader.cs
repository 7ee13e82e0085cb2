using MonitorSim.Traces.Formats;

namespace MonitorSim.Traces;

/// <summary>Reads recordings: text in columns, separated by commas, semicolons, tabs or vertical bars; Parquet; HDF5, MAT 7.3 among it. Which it is tells
/// the content, not the name.</summary>
public static class TraceReader
{
    /// <summary>So much of a file is looked at before it is read.</summary>
    private const int HeadSize = 256 << 10;

    /// <summary>Reads a file, or standard input where the path is <c>-</c>.</summary>
    /// <param name="path">The file's path, or <c>-</c>.</param>
    /// <param name="dialect">How it is written; what is not set is worked out.</param>
    /// <param name="wanted">The columns to keep; null keeps all but the time column, as numbers where every cell that is not
    /// empty is a number, else as words.</param>
    /// <param name="progress">Told the bytes read so far, now and then.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read; with all problems, counted by kind, the first ten of each kind listed.</exception>
    public static Trace Read(string path, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null,
        IProgress<long>? progress = null, CancellationToken cancel = default) =>
        Read(path, dialect, wanted, out _, progress, cancel);

    /// <summary>Reads a file and says how it is written. See <see cref="Read(string, Dialect?, IReadOnlyCollection{ColumnRequest}?, IProgress{long}?, CancellationToken)"/>.</summary>
    /// <param name="path">The file's path, or <c>-</c>.</param>
    /// <param name="dialect">How it is written; what is not set is worked out.</param>
    /// <param name="wanted">The columns to keep; null: all.</param>
    /// <param name="found">How it turned out to be written.</param>
    /// <param name="progress">Told the bytes read so far, now and then.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read.</exception>
    public static Trace Read(string path, Dialect? dialect, IReadOnlyCollection<ColumnRequest>? wanted, out DialectFound found,
        IProgress<long>? progress = null, CancellationToken cancel = default)
    {
        if (path == "-")
        {
            using var input = Console.OpenStandardInput();
            try
            {
                return Read(input, "-", dialect, wanted, out found, progress, cancel);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw new InputException(new Problem("standard input", $"it cannot be read: {e.Message}", "give a file, or the recording on standard input"));
            }
        }

        if (path.Length == 0) throw new InputException(new Problem("trace", "the path is empty", "give a file, or - for standard input"));
        if (Directory.Exists(path)) throw new InputException(new Problem(path, "this is a folder", "give a file"));
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1, FileOptions.SequentialScan);
            return Read(file, path, Path.GetFileName(path), dialect, wanted, out found, progress, cancel);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(NoSuchFile(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new InputException(new Problem(path, $"the file cannot be read: {e.Message}", "give a file that can be opened for reading"));
        }
    }

    /// <summary>Reads a stream to its end; it is not closed.</summary>
    /// <param name="stream">The bytes of the recording.</param>
    /// <param name="name">What to call it in the trace and in problems.</param>
    /// <param name="dialect">How it is written; what is not set is worked out.</param>
    /// <param name="wanted">The columns to keep; null: all.</param>
    /// <param name="progress">Told the bytes read so far, now and then.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read.</exception>
    public static Trace Read(Stream stream, string name, Dialect? dialect = null, IReadOnlyCollection<ColumnRequest>? wanted = null,
        IProgress<long>? progress = null, CancellationToken cancel = default) =>
        Read(stream, name, dialect, wanted, out _, progress, cancel);

    /// <summary>Reads a stream to its end and says how it is written.</summary>
    /// <param name="stream">The bytes of the recording.</param>
    /// <param name="name">What to call it in the trace and in problems.</param>
    /// <param name="dialect">How it is written; what is not set is worked out.</param>
    /// <param name="wanted">The columns to keep; null: all.</param>
    /// <param name="found">How it turned out to be written.</param>
    /// <param name="progress">Told the bytes read so far, now and then.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">It cannot be read.</exception>
    public static Trace Read(Stream stream, string name, Dialect? dialect, IReadOnlyCollection<ColumnRequest>? wanted, out DialectFound found,
        IProgress<long>? progress = null, CancellationToken cancel = default) =>
        Read(stream, name == "-" ? "standard input" : name, name, dialect, wanted, out found, progress, cancel);

    private static Trace Read(Stream stream, string place, string name, Dialect? dialect, IReadOnlyCollection<ColumnRequest>? wanted,
        out DialectFound found, IProgress<long>? progress, CancellationToken cancel)
    {
        dialect ??= new Dialect();
        GivenDialect.Check(dialect, place);
        using var raw = new HashingStream(stream.CanSeek || !cancel.CanBeCanceled ? stream : new InterruptibleStream(stream, cancel), progress, cancel);
        var fromStart = stream is { CanSeek: true, Position: 0 };
        var bytes = new HeadStream(raw);
        bytes.Peek(HeadSize);
        if (BinaryFormat.Of(bytes.Head) is { } open)
        {
            var whole = Whole(stream, fromStart, bytes, place);
            return BinaryTrace.Read(open, whole, place, name, raw.Sha256(), dialect, wanted, out found, cancel);
        }

        using var text = OpenText(bytes, dialect, place, out var encoding);
        BinaryContent.Check(text.Head, place);
        var layout = new LayoutFinder(place, dialect).Find(text, encoding);
        var columns = ColumnPlan.Of(layout, wanted, place);
        using var rows = new RowReader(layout, columns, new ProblemList(place));
        text.Skip(layout.Offset);
        rows.Read(text);
        found = layout.Found;
        return rows.ToTrace(name, raw.Sha256());
    }

    // Formats of columns are read here and there: a file from its disk once its hash is known, anything else from memory.
    private static Stream Whole(Stream stream, bool fromStart, HeadStream bytes, string place)
    {
        if (stream is FileStream && fromStart)
        {
            bytes.CopyTo(Stream.Null);
            stream.Position = 0;
            return new BufferedStream(stream);
        }

        var whole = new MemoryStream();
        try
        {
            bytes.CopyTo(whole);
        }
        catch (Exception e) when (e is OutOfMemoryException || (e is IOException && whole.Length > Array.MaxLength / 2))
        {
            throw new InputException(new Problem(place, "it is too large to be held in memory", "give it as a file"));
        }

        whole.Position = 0;
        return whole;
    }

    private static HeadStream OpenText(HeadStream bytes, Dialect dialect, string place, out TextEncoding encoding)
    {
        BinaryContent.CheckSignature(bytes.Head, place);
        encoding = dialect.Encoding is { } given
            ? TextEncoding.Named(given, bytes.Head, place)
            : TextEncoding.Of(bytes.Head, bytes.HeadIsAll);
        bytes.Skip(encoding.MarkLength);
        if (encoding.IsUtf8) return bytes;
        var text = new HeadStream(System.Text.Encoding.CreateTranscodingStream(bytes, encoding.Encoding, new System.Text.UTF8Encoding(false)));
        text.Peek(HeadSize);
        return text;
    }

    private static Problem NoSuchFile(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        var near = Directory.Exists(folder)
            ? NearestName.Of(Path.GetFileName(path), Directory.EnumerateFiles(folder).Take(2000).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal))
            : null;
        return new Problem(path, "there is no such file", near is null ? "give the path of a recording" : $"did you mean '{near}'?");
    }
}
