using System.Diagnostics;

namespace MonitorSim.Tests;

/// <summary>A program run to its end in a folder.</summary>
internal static class Command
{
    /// <returns>The exit code, and all that was written: standard output, then standard error.</returns>
    public static (int ExitCode, string Text) Run(string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd() + error.Result;
        process.WaitForExit();
        return (process.ExitCode, text);
    }
}
