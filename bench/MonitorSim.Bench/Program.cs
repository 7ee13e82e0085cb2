using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using BenchmarkDotNet.Running;
using MonitorSim.Bench;
using MonitorSim.Traces;

// dotnet run -c Release --project bench/MonitorSim.Bench -- --filter '*'
// The two other ways are for bench/peers.py, which times programs in other languages on the same data.
switch (args)
{
    case ["data", var folder]:
        Directory.CreateDirectory(folder);
        Recordings.WriteCsv(Path.Combine(folder, "recording.csv"), 1_000_000);
        File.WriteAllBytes(Path.Combine(folder, "speed.f64"), MemoryMarshal.AsBytes<double>(Recordings.Speed(10_000_000)));
        break;
    case ["times", var folder]:
        var speed = MemoryMarshal.Cast<byte, double>(File.ReadAllBytes(Path.Combine(folder, "speed.f64"))).ToArray();
        var questions = new Questions(speed, "33 mm/s");
        Time("read", () => TraceReader.Read(Path.Combine(folder, "recording.csv")));
        Time("quiet limit", () => questions.Replayed());
        Time("critical limit without filter", () => questions.Critical(0));
        Time("critical limit at 100 cycles", () => questions.Critical(99_000_000));
        Time("frontier", () => questions.Frontier());
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}

static void Time(string what, Func<object> work)
{
    var seconds = new double[9];
    for (var k = -2; k < seconds.Length; k++)
    {
        var clock = Stopwatch.StartNew();
        GC.KeepAlive(work());
        if (k >= 0) seconds[k] = clock.Elapsed.TotalSeconds;
    }

    Array.Sort(seconds);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}\t{seconds[4]:R}\t{seconds[0]:R}"));
}
