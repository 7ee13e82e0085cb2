using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Standards;

/// <summary>One sentence of a standard as a case: an axis, a recording, and everything that has to happen.</summary>
/// <param name="Name">The function or category, and what is shown of it.</param>
/// <param name="Sentence">What the standard says, in our own words.</param>
/// <param name="Stops">The axis's stops, as <see cref="Story"/> takes them.</param>
/// <param name="Monitor">Its only monitor; empty for none.</param>
/// <param name="Recording">The recording.</param>
/// <param name="Happens">What has to happen, and nothing else.</param>
public sealed record Definition(string Name, string Sentence, string Stops, string Monitor, string Recording, params IReadOnlyList<string> Happens)
{
    /// <summary>All that happened.</summary>
    public IReadOnlyList<string> Replayed() => Story.Of(Stops, Monitor, Recording);

    /// <inheritdoc/>
    public override string ToString() => Name;
}
