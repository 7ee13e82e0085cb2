using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

/// <summary>Where output cannot be written: which file, what happened, what to do, and nothing half-written.</summary>
public sealed class OutputTests : CommandTest
{
    private const string DiskIsFull = "the disk is full; free some space, or write to another disk";

    [SkippableTheory]
    [InlineData("replay", "--json")]
    [InlineData("replay", "--report")]
    [InlineData("tune", "--json")]
    [InlineData("tune", "--report")]
    [InlineData("check", "--junit")]
    [InlineData("describe", "--write")]
    [InlineData("synth", "-o")]
    public void AFullDevice(string command, string option)
    {
        NeedsDevices();
        Assert.Equal(2, Run([command, .. Inputs(command), option, "/dev/full", "--quiet"]));
        Assert.Equal($"/dev/full: {DiskIsFull}", Error.ToString().TrimEnd());
        Assert.False(File.Exists("/dev/full.part"));
    }

    /// <summary>A file that is being written aside ends up nowhere: here, on a full disk.</summary>
    [SkippableTheory]
    [InlineData("--json", "result.json")]
    [InlineData("--report", "page.html")]
    [InlineData("--csv", "headroom.csv")]
    [InlineData("--parquet", "headroom.parquet")]
    [InlineData("--plot", "bridge.svg")]
    public void AFullDiskLeavesNoHalf(string option, string file)
    {
        NeedsDevices();
        File.CreateSymbolicLink(Path.Combine(Folder, file + ".part"), "/dev/full");
        Assert.Equal(2, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), option, option is "--json" or "--report" ? Path.Combine(Folder, file) : Folder, "--quiet"));
        Assert.EndsWith(DiskIsFull, Error.ToString().TrimEnd(), StringComparison.Ordinal);
        Assert.StartsWith(Folder, Error.ToString(), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(Folder, "*.part"));
        Assert.False(File.Exists(Path.Combine(Folder, file)));
    }

    [SkippableFact]
    public void FullStandardOutput()
    {
        NeedsDevices();
        var (exit, text) = Command.Run(Folder, "sh", "-c", $"dotnet '{AppContext.BaseDirectory}/MonitorSim.Cli.dll' describe '{Demo("bridge-gate-speed", "trace.csv")}' > /dev/full");
        Assert.Equal((2, $"standard output: {DiskIsFull}"), (exit, text.TrimEnd()));
    }

    [Theory]
    [InlineData("--json", "")]
    [InlineData("--csv", "")]
    [InlineData("--plot", "")]
    [InlineData("--parquet", "")]
    public void AFolderThatIsAFile(string option, string below)
    {
        var file = Path.Combine(Folder, "taken");
        File.WriteAllText(file, "mine");
        Assert.Equal(2, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), option, Path.Combine(file, option == "--json" ? "x.json" : below), "--quiet"));
        Assert.Contains($"'{file}' is no folder; choose another place", Error.ToString(), StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public void AFileThatIsAFolder()
    {
        Assert.Equal(2, Run("replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--json", Folder, "--quiet"));
        Assert.Equal($"{Folder}: this is a folder; name a file", Error.ToString().TrimEnd());
    }

    /// <summary>An ordinary user, whom the tests are not always: then one is borrowed.</summary>
    [SkippableTheory]
    [InlineData("--json", "locked/result.json", "locked/result.json")]
    [InlineData("--plot", "locked", "locked")]
    public void AFolderThatMayNotBeWrittenTo(string option, string target, string named)
    {
        NeedsDevices();
        var isRoot = Environment.IsPrivilegedProcess;
        Skip.If(isRoot && !File.Exists("/usr/bin/setpriv"), "needs a user who is not root");
        Assert.Equal((0, ""), Command.Run(Folder, "sh", "-c", "mkdir locked && chmod 555 locked && chmod 755 ."));
        string[] command = [.. isRoot ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"] : Array.Empty<string>(), "dotnet", Path.Combine(AppContext.BaseDirectory, "MonitorSim.Cli.dll"),
            "replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), option, Path.Combine(Folder, target), "--quiet"];
        var (exit, text) = Command.Run(Folder, command[0], command[1..]);
        Assert.Equal((2, $"{Path.Combine(Folder, named)}: it is not permitted to write there; choose another place, or change the permissions of this one"), (exit, text.TrimEnd()));
    }

    /// <summary>A pipe and a device are written straight; a link stays one, and what it leads to is replaced whole.</summary>
    [SkippableFact]
    public void WhatIsNoFileIsWrittenStraight()
    {
        NeedsDevices();
        var (real, link) = (Path.Combine(Folder, "real.json"), Path.Combine(Folder, "link.json"));
        File.WriteAllText(real, "{}");
        File.CreateSymbolicLink(link, real);
        string[] replay = ["replay", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), "--quiet", "--json"];
        Assert.Equal(1, Run([.. replay, "/dev/null"]));
        Assert.Equal(1, Run([.. replay, link]));
        Assert.Equal(real, new FileInfo(link).LinkTarget);
        Assert.Equal((0, ""), Command.Run(Folder, "mkfifo", "pipe"));
        var read = Task.Run(() => File.ReadAllText(Path.Combine(Folder, "pipe")));
        Assert.Equal(1, Run([.. replay, Path.Combine(Folder, "pipe")]));
        Assert.Equal(File.ReadAllText(real), read.Result);
        Assert.Equal(["link.json", "pipe", "real.json"], Directory.GetFiles(Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(0x70)]
    [InlineData(0x27)]
    public void AFullDiskOfWindows(int code) =>
        Assert.Equal($"x.json: {DiskIsFull}", Writing.Problem("x.json", new IOException("…", unchecked((int)0x80070000) | code)).ToString());

    /// <summary>Whatever goes wrong is one line, and no trace of the stack.</summary>
    [Fact]
    public void NoExceptionIsShownAsOne()
    {
        var terminal = new Terminal(Out, Error, () => Bytes);
        Assert.Equal(2, CommandLine.Guard(terminal, () => throw new OutOfMemoryException()));
        Assert.Equal(2, CommandLine.Guard(terminal, () => throw new IOException("odd")));
        Assert.Equal(2, CommandLine.Guard(terminal, () => throw new InvalidOperationException("odd")));
        var lines = Error.ToString().TrimEnd().Split(Environment.NewLine);
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("there is not enough memory; ", lines[0], StringComparison.Ordinal);
        Assert.Equal("standard output: it cannot be written: odd; choose another place", lines[1]);
        Assert.StartsWith("this is an error of monitorsim itself, please report it: InvalidOperationException: odd (at ", lines[2], StringComparison.Ordinal);
    }

    private static void NeedsDevices() => Skip.IfNot(OperatingSystem.IsLinux(), "needs /dev/full");

    private static string[] Inputs(string command) => command switch
    {
        "describe" => [Demo("bridge-gate-speed", "trace.csv")],
        "synth" => [Path.Combine(Synthesis.ScenarioErrorTests.Examples(), "gate.json")],
        "check" => [Demo("lift-standstill", "plan.json"), Demo("lift-standstill", "trace.csv")],
        _ => [Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv")],
    };
}
