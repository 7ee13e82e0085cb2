using MonitorSim.Demo;

// Writes the demo's recordings again: dotnet run --project traces/generator -- traces
var folder = args.Length > 0 ? args[0] : "traces";
foreach (var demo in DemoCases.All)
{
    Directory.CreateDirectory(Path.Combine(folder, demo.Name));
    File.WriteAllText(Path.Combine(folder, demo.Name, "trace.csv"), CsvText.Of(demo.Record().ToTrace(demo.Name)));
}
