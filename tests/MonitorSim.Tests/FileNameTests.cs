namespace MonitorSim.Tests;

/// <summary>Names of a plan or a recording as names of files: none leaves its folder, on any system.</summary>
public class FileNameTests
{
    [Theory]
    [InlineData("bridge", "bridge")]
    [InlineData("../../x axis", "______x_axis")]
    [InlineData("/etc/x", "_etc_x")]
    [InlineData("C:\\x", "C__x")]
    [InlineData("..", "__")]
    [InlineData("nul\0", "nul_")]
    [InlineData("CON", "CON_")]
    [InlineData("lpt1", "lpt1_")]
    [InlineData("größe", "größe")]
    [InlineData("", "_")]
    public void OfNames(string name, string file) => Assert.Equal(file, FileName.Of(name));

    [Theory]
    [InlineData("monday/run 1.2.csv", "run 1.2")]
    [InlineData("...csv", "_")]
    [InlineData("..", "_")]
    [InlineData(".csv", "_")]
    [InlineData("../..csv", "_")]
    [InlineData("a. .csv", "a")]
    [InlineData("con.csv", "con_")]
    [InlineData("NUL.2.csv", "NUL.2_")]
    [InlineData("COM1 .csv", "COM1_")]
    public void OfRecordings(string path, string file) => Assert.Equal(file, FileName.OfStem(path));

    [Theory]
    [InlineData("a")]
    [InlineData("ä")]
    [InlineData("漢")]
    public void LongNamesAreCut(string letter) => Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(FileName.Of(string.Concat(Enumerable.Repeat(letter, 1000)))), 148, 150);

    [Fact]
    public void EachNameGetsAFileOfItsOwn()
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        Assert.Equal(["a_b", "a_b-2", "A_b-3"], new[] { "a b", "a_b", "A/b" }.Select(name => FileName.Free(FileName.Of(name), taken)));
    }
}
