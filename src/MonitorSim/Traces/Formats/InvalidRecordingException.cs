namespace MonitorSim.Traces.Formats;

/// <summary>A binary recording that can be opened, but is none that can be used. Who knows its name makes a <see cref="Problem"/> of it.</summary>
/// <param name="what">What was found.</param>
/// <param name="fix">What would be right.</param>
internal sealed class InvalidRecordingException(string what, string fix) : Exception(what)
{
    public string Fix => fix;
}
