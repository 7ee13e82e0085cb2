using System.Runtime.CompilerServices;

namespace MonitorSim.Tests;

public sealed class ReadmeTests
{
    /// <summary>The README's example is the test that runs, letter for letter.</summary>
    [Fact]
    public void ShowsTheTestThatRuns()
    {
        var example = File.ReadAllText(Path.Combine(Here(), "Assertions", "FirstTripTest.cs")).ReplaceLineEndings("\n").TrimEnd();
        Assert.Contains(example, File.ReadAllText(Path.Combine(Here(), "..", "..", "README.md")).ReplaceLineEndings("\n"));
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
