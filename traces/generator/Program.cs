using MonitorSim.Demo;
using MonitorSim.Traces;

// Writes the demo's recordings again: dotnet run --project traces/generator -- traces
var folder = args.Length > 0 ? args[0] : "traces";
foreach (var demo in DemoCases.All)
{
    Directory.CreateDirectory(Path.Combine(folder, demo.Name));
    using var file = File.Create(Path.Combine(folder, demo.Name, "trace.csv"));
    TraceWriter.Write(demo.Record().ToTrace(demo.Name), file);
}
