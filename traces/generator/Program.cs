using MonitorSim.Demo;

// Writes the demo's recordings again: dotnet run --project traces/generator -- traces
var folder = args.Length > 0 ? args[0] : "traces";
foreach (var (name, text) in SlabSaw.Recordings())
{
    Directory.CreateDirectory(Path.Combine(folder, name));
    File.WriteAllText(Path.Combine(folder, name, "trace.csv"), text);
}
