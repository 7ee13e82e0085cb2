using System.Diagnostics;
using System.Globalization;

namespace MonitorSim.Tests.Cli;

/// <summary>The command as a process of its own, which somebody stops with Ctrl-C.</summary>
internal sealed class Interrupted : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly Process _process;
    private readonly Task<string> _error;

    /// <summary>Starts it; standard input stays open, and nothing comes.</summary>
    public Interrupted(params string[] arguments)
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "signals are sent as on Linux");

        // Whoever runs the tests in the background has Ctrl-C ignored, and children take that over.
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "dotnet", Path.Combine(AppContext.BaseDirectory, "MonitorSim.Cli.dll"), .. arguments])
            { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        _process = Process.Start(start)!;
        _error = _process.StandardError.ReadToEndAsync();
        _ = _process.StandardOutput.ReadToEndAsync();
    }

    /// <summary>Gives it more to read than a pipe holds, so that it has begun to read when this returns.</summary>
    public void Feed(string text)
    {
        _process.StandardInput.Write(text.PadRight(200_000, ' '));
        _process.StandardInput.Flush();
    }

    /// <summary>Waits until something holds, while it runs.</summary>
    public void Until(Func<bool> holds)
    {
        for (var waited = Stopwatch.StartNew(); !holds(); Thread.Sleep(20))
            Assert.False(_process.HasExited || waited.Elapsed > Patience, $"it never came so far: {(_process.HasExited ? _error.Result : "")}");
    }

    /// <summary>Presses Ctrl-C; gives the exit code and what stands on standard error.</summary>
    public (int ExitCode, string Error) Stop()
    {
        Assert.Equal(0, Command.Run(".", "kill", "-INT", _process.Id.ToString(CultureInfo.InvariantCulture)).ExitCode);
        Assert.True(_process.WaitForExit(Patience), "it does not end");
        return (_process.ExitCode, _error.Result);
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }
}
