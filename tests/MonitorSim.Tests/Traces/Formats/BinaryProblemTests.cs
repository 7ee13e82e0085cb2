using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces.Formats;

/// <summary>What is wrong in a binary recording is said in the words that CSV gets: file, row, column and what would be right.</summary>
public class BinaryProblemTests
{
    private static readonly double[] Times = [0, 0.001, 0.002, 0.003];

    public static TheoryData<string> Formats => new("parquet", "hdf5");

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_time_that_repeats(string format) =>
        Assert.Equal(["run(row 3, column 'time'): the time '0.001' repeats the one of the sample before, to the nanosecond; each sample needs a later time than the one before"],
            Problems(format, [], ("time", new[] { 0, 0.001, 0.001, 0.003 })));

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_time_that_runs_backwards(string format) =>
        Assert.Equal(["run(row 4, column 'time'): the time '0.0015' runs backwards, 0.0005 s before the sample above; each sample needs a later time than the one before"],
            Problems(format, [], ("time", new[] { 0, 0.001, 0.002, 0.0015 })));

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_time_that_is_missing(string format) =>
        Assert.Equal(["run(row 2, column 'time'): the time is missing; write a number, such as 0.125"], Problems(format, [], ("time", new[] { 0, double.NaN, 0.002, 0.003 })));

    [Theory]
    [MemberData(nameof(Formats))]
    public void No_time_and_no_rate(string format)
    {
        Assert.StartsWith("run: there is no time column and no rate; the columns are 'v'; name it in the plan", Problems(format, [], ("v", Times))[0], StringComparison.Ordinal);
        Assert.Equal([0L, 500_000, 1_000_000, 1_500_000], Read(format, new() { Rate = 2000 }, null, ("v", Times)).Times);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_number_that_is_infinite(string format) =>
        Assert.Equal(["run(row 2, column 'v'): 'Infinity' is not a number; write a number such as 12.5, or leave the cell empty where the value is missing"],
            Problems(format, [], ("time", Times), ("v", new[] { 1, double.PositiveInfinity, 2, 3 })));

    [Theory]
    [MemberData(nameof(Formats))]
    public void Words_where_a_plan_wants_numbers(string format) =>
        Assert.Equal(["run(row 3, column 'v'): 'on' is not a number; write a number such as 12.5, or leave the cell empty where the value is missing"],
            Problems(format, [Reading.Number("v")], ("time", Times), ("v", new[] { "1", "2.5", "on", "3" })));

    /// <summary>What a plan says of text (its decimal mark) helps nothing here, so it is not advised.</summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void A_number_with_another_mark(string format) =>
        Assert.Equal(["run(row 3, column 'v'): '2,5' is not a number; write 2.5"],
            Problems(format, [Reading.Number("v")], ("time", Times), ("v", new[] { "1", "2", "2,5", "3" })));

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_column_that_is_not_there(string format) =>
        Assert.Equal(["run: there is no column 'sped'; did you mean 'speed'?"], Problems(format, [Reading.Number("sped")], ("time", Times), ("speed", Times)));

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_unit_of_time_that_is_not_known(string format) =>
        Assert.Contains("the time's unit 'h' is not known", Problems(format, [], ("time [h]", Times))[0], StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Formats))]
    public void Integers_beyond_doubles_stay_exact(string format)
    {
        var column = Assert.IsType<NumberColumn>(Read(format, new(), null, ("time", Times), ("v", new[] { 9_007_199_254_740_993, -1, 0, long.MinValue })).Find("v"));

        Assert.Equal([9_007_199_254_740_993, -1, 0, long.MinValue], Enumerable.Range(0, 4).Select(k => (long)column.Exact(k).Numerator));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void No_sample(string format) => Assert.Contains("run: ", Problems(format, [], ("time", Array.Empty<double>()))[0], StringComparison.Ordinal);

    [Fact]
    public void Several_groups_are_listed()
    {
        var file = new PureHDF.H5File
        {
            ["a"] = new PureHDF.H5Group { ["time"] = Times, ["speed"] = Times },
            ["b"] = new PureHDF.H5Group { ["time"] = Times },
        };
        var bytes = new MemoryStream();
        file.Write(bytes);

        Assert.Equal("run: several groups have datasets that could be columns: '/a' with time, speed; '/b' with time; a recording is one group: write the columns of one recording into one group, and other recordings into other files",
            Assert.Single(Assert.Throws<InputException>(() => TraceReader.Read(new MemoryStream(bytes.ToArray()), "run")).Problems).ToString());
    }

    [Fact]
    public void A_dataset_of_another_length_is_no_column()
    {
        Assert.Equal(["run(column 'short'): it has 2 values, and the recording 4 samples; write it as one number, text or boolean a sample"],
            Problems("hdf5", [Reading.Number("short")], ("time", Times), ("short", new[] { 1.0, 2 })));
        Assert.Equal(["v"], Read("hdf5", new(), null, ("time", Times), ("short", new[] { 1.0, 2 }), ("v", Times)).Columns.Select(column => column.Name));
    }

    [Theory]
    [InlineData("PARE0123456789", "this is a binary file (Parquet, encrypted)")]
    [InlineData("MATLAB 5.0 MAT-file, Platform", "this is a binary file (MAT of version 5)")]
    [InlineData("MATLAB 7.3 MAT-file, Platform", "this is a binary file (MAT 7.3, cut off)")]
    [InlineData("PAR1", "the file is damaged, cut off, or written in a way that cannot be read")]
    [InlineData("PAR1abcdefghPAR1", "the file is damaged, cut off, or written in a way that cannot be read")]
    public void Files_that_only_begin_like_one(string text, string what) =>
        Assert.StartsWith(what, Assert.Single(Assert.Throws<InputException>(() => Reading.Of(text)).Problems).What, StringComparison.Ordinal);

    private static string[] Problems(string format, ColumnRequest[] wanted, params (string, Array)[] columns) =>
        [.. Assert.Throws<InputException>(() => Read(format, new(), wanted.Length == 0 ? null : wanted, columns)).Problems.Select(problem => problem.ToString())];

    private static Trace Read(string format, Dialect dialect, ColumnRequest[]? wanted, params (string, Array)[] columns) =>
        TraceReader.Read(new MemoryStream(format == "hdf5" ? BinaryFile.Hdf5("", columns) : BinaryFile.Parquet(100, columns)), "run", dialect, wanted);
}
