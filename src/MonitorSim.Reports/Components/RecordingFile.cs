namespace MonitorSim.Reports.Components;

/// <summary>A recording as the table of files shows it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Samples">How many samples it has.</param>
/// <param name="Duration">Last sample minus first, s.</param>
/// <param name="Sha256">The hash of its bytes, or null.</param>
public sealed record RecordingFile(string Name, int Samples, decimal Duration, string? Sha256);
