using BenchmarkDotNet.Running;

// dotnet run -c Release --project bench/MonitorSim.Bench -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
