namespace MonitorSim.Traces;

/// <summary>How a recording turned out to be written, and where its parts begin.</summary>
/// <param name="Dialect">Every member that the recording has is set: either the time column and its unit, or the rate.</param>
/// <param name="HeaderLine">The line of the header, counted from 1; null where there is none and columns are called
/// <c>column 1</c> and so on.</param>
/// <param name="FirstSampleLine">The line of the first sample, counted from 1.</param>
/// <param name="ByteOrderMark">Whether the file begins with a byte order mark.</param>
/// <param name="Notes">What was assumed rather than given, as sentences for people.</param>
public sealed record DialectFound(Dialect Dialect, long? HeaderLine, long FirstSampleLine, bool ByteOrderMark, IReadOnlyList<string> Notes);
