using System.Text;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>Each kind of bad recording has an error of its own that says where, what, and what would be right.</summary>
public class ProblemTests
{
    private const string HowToTime = "name it in the plan, \"trace\": { \"time\": { \"column\": \"…\", \"unit\": \"s\" } }, or give \"rate\": \"1 kHz\"";

    private static string Only(string text, Dialect? dialect = null, params ColumnRequest[] wanted) =>
        Assert.Single(Reading.Problems(text, dialect, wanted.Length == 0 ? null : wanted));

    [Theory]
    [InlineData("")]
    [InlineData("\n\r\n  \n")]
    [InlineData("\uFEFF")]
    public void An_empty_file(string text) =>
        Assert.Equal("run.csv: the file is empty; a recording has a header and at least one sample", Only(text));

    [Theory]
    [InlineData("t,v\n")]
    [InlineData("t,v")]
    [InlineData("# a log\nt,v\n")]
    public void Only_a_header(string text) =>
        Assert.Equal("run.csv: there is a header, but no sample below it; a recording has at least one sample", Only(text));

    [Fact]
    public void Only_a_header_and_units() =>
        Assert.Contains("no sample below it", Only("t,v\ns,mm\n", new Dialect { UnitsRow = true }), StringComparison.Ordinal);

    [Fact]
    public void Only_comments() =>
        Assert.Equal("run.csv: there is nothing but comments; a recording has a header and at least one sample", Only("# a\n# b\n"));

    [Fact]
    public void A_truncated_last_line()
    {
        Assert.Equal("run.csv(row 4): the last row is cut off: 2 cells of 3, and no line end; record it again, or remove that row",
            Only("t,v,w\n0,1,2\n1,2,3\n2,3"));
        Assert.Equal("run.csv(row 4): the last row is cut off: 1 cell of 3; record it again, or remove that row", Only("t,v,w\n0,1,2\n1,2,3\n2\n"));
    }

    [Fact]
    public void A_last_line_cut_within_its_last_number()
    {
        var problems = Reading.Problems("t,v\n0,1.5\n1,2.5e", null, [Reading.Number("v")]);
        Assert.Contains("run.csv(row 3, column 'v'): '2.5e' is not a number; write a number such as 12.5, or leave the cell empty where the value is missing", problems);
        Assert.Contains("run.csv(row 3): the last row seems cut off: it has no line end, and its last cell is '2.5e'; record it again, or remove that row", problems);
    }

    [Fact]
    public void A_last_line_without_a_line_end_is_no_error() => Assert.Equal([1.5, 2.5], Reading.Of("t,v\n0,1.5\n1,2.5").Numbers("v"));

    [Fact]
    public void A_cell_still_quoted_at_the_end() =>
        Assert.Contains("run.csv(row 3): a quoted cell is still open where the file ends; the file is cut off, or the quote's end is missing",
            Reading.Problems("t,v,w\n0,1,a\n1,2,\"b\n2,3,c\n3,4,d\n", null, [Reading.Word("w")]));

    [Fact]
    public void Text_behind_a_closing_quote() =>
        Assert.Equal("run.csv(row 3): text follows the closing quote of a cell; double quotes inside a quoted cell", Only("t,v\n0,1\n1,\"2\"3\n2,3\n"));

    [Fact]
    public void A_repeated_time() =>
        Assert.Equal("run.csv(row 4, column 't'): the time '1.0' repeats the one of the sample before, to the nanosecond; each sample needs a later time than the one before",
            Only("t,v\n0,1\n1,2\n1.0,3\n2,4\n"));

    [Fact]
    public void A_backward_time() =>
        Assert.Equal("run.csv(row 4, column 't'): the time '0.75' runs backwards, 0.25 s before the sample above; each sample needs a later time than the one before",
            Only("t,v\n0,1\n1,2\n0.75,3\n2,4\n"));

    [Fact]
    public void A_missing_time() =>
        Assert.Equal("run.csv(row 3, column 't'): the time is missing; write a number, such as 0.125", Only("t,v\n0,1\n,2\n2,4\n"));

    [Fact]
    public void A_time_that_is_none() =>
        Assert.Equal("run.csv(row 3, column 't'): 'later' is no time; write a number, such as 0.125", Only("t,v\n0,1\nlater,2\n2,4\n"));

    [Fact]
    public void A_time_beyond_all_measure() =>
        Assert.StartsWith("run.csv(row 3, column 't'): the time '1e20' is beyond what a recording can last (292 years); ", Only("t,v\n0,1\n1e20,2\n"), StringComparison.Ordinal);

    [Fact]
    public void A_ragged_row()
    {
        Assert.Equal("run.csv(row 3): 2 cells where the first row has 3; give every row as many cells as the first; put cells that hold the separator in quotes",
            Only("t,v,w\n0,1,2\n1,2\n2,3,4\n"));
        Assert.Contains("run.csv(row 4): 4 cells where", Only("t,v,w\n0,1,2\n1,2,3\n2,3,4,5\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_header_of_another_length() =>
        Assert.Equal("run.csv(row 1): the header has 2 names, but the row below it has 3 cells; name every column once", Only("t,v\n0,1,2\n1,2,3\n2,3,4\n"));

    [Fact]
    public void A_cell_that_is_no_number() =>
        Assert.Equal("run.csv(row 3, column 'v'): 'abc' is not a number; write a number such as 12.5, or leave the cell empty where the value is missing",
            Only("t,v\n0,1.5\n1,abc\n", null, Reading.Number("v")));

    [Fact]
    public void The_other_decimal_mark() =>
        Assert.Equal("run.csv(row 3, column 'v'): '2,5' is not a number; write 2.5, or give \"decimal\": \",\" in the plan's trace",
            Only("t;v\n0.5;1.5\n1;2,5\n", null, Reading.Number("v")));

    [Fact]
    public void Words_among_many_numbers_make_an_error_rather_than_a_column_of_words()
    {
        var rows = string.Concat(Enumerable.Range(0, 300).Select(k => $"{k},{k}.5\n"));
        Assert.Contains("column 'v'): 'fault' is not a number", Only("t,v\n" + rows + "300,fault\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Problems_of_a_kind_are_counted_and_ten_are_listed()
    {
        var rows = string.Concat(Enumerable.Range(0, 47).Select(k => $"{k},x{k},1\n"));
        var problems = Reading.Problems("t,v,w\n" + rows + "50,1,1\n50,1,1\n", null, [Reading.Number("v")]);
        Assert.Equal(12, problems.Length);
        Assert.Equal(10, problems.Count(p => p.Contains("is not a number", StringComparison.Ordinal)));
        Assert.Contains("'x9'", problems[10], StringComparison.Ordinal);
        Assert.Equal("run.csv: ... and 37 more of this kind", problems[11]);
        Assert.Contains("repeats", problems[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_that_is_not_there()
    {
        const string text = "t,speed,torque\n0,1,2\n";
        Assert.Equal("run.csv: there is no column 'Sped'; did you mean 'speed'?", Only(text, null, Reading.Number("Sped")));
        Assert.Equal("run.csv: there is no column 'axis 7'; the columns are 't', 'speed', 'torque'", Only(text, null, Reading.Number("axis 7")));
        Assert.Equal("run.csv: there is no time column 'T'; did you mean 't'?", Only(text, new Dialect { TimeColumn = "T" }));
        Assert.Equal(2, Reading.Problems(text, null, [Reading.Number("sped"), Reading.Word("torq")]).Length);
    }

    [Fact]
    public void No_time_and_no_rate() =>
        Assert.Equal($"run.csv: there is no time column and no rate; the columns are 'a', 'b'; {HowToTime}", Only("a,b\n0,1\n1,2\n"));

    [Fact]
    public void Two_columns_of_a_name()
    {
        const string text = "t,v,w,v\n0,1,2,3\n";
        Assert.Equal("run.csv: two columns are called 'v' (the 2nd and the 4th); name each column once", Only(text));
        Assert.Equal("run.csv: two columns are called 'v'; name each column once", Only(text, null, Reading.Number("v")));
        Assert.Equal([2.0], Reading.Of(text, null, [Reading.Number("w")]).Numbers("w"));
        Assert.Equal("run.csv: two columns are called 't'; name each column once", Only("t,t\n0,1\n", new Dialect { TimeColumn = "t" }));
    }

    [Fact]
    public void A_unit_of_time_that_is_none() =>
        Assert.Equal("run.csv(column 't [min]'): the time's unit 'min' is not known; would do: s, ms, µs, us, ns, or ISO 8601 for date-times", Only("t [min],v\n0,1\n"));

    [Fact]
    public void What_is_given_is_checked()
    {
        var given = new Dialect { Delimiter = 'é', Decimal = ':', SkipRows = -1, TimeColumn = "t", TimeUnit = "h", Rate = Fraction.One };
        Assert.Equal(5, Reading.Problems("t,v\n0,1\n", given).Length);
        Assert.Contains("skipRows", Only("t,v\n0,1\n", new Dialect { SkipRows = 9 }), StringComparison.Ordinal);
        Assert.Equal("run.csv: the encoding 'klingon' is not known; would do: utf-8, utf-16le, utf-16be, latin-1, windows-1252",
            Only("t,v\n0,1\n", new Dialect { Encoding = "klingon" }));
    }

    [Theory]
    [InlineData(new byte[] { 0x50, 0x41, 0x52, 0x45, 0x15, 0x04 }, "Parquet, encrypted")]
    [InlineData(new byte[] { 0x50, 0x4B, 3, 4, 20, 0 }, "ZIP or spreadsheet")]
    [InlineData(new byte[] { 0x1F, 0x8B, 8, 0 }, "gzip")]
    public void A_binary_file_of_a_known_kind(byte[] bytes, string kind) =>
        Assert.Equal([$"run.csv: this is a binary file ({kind}); export it as CSV with one row a sample, as Parquet, or as HDF5 (MAT: save it as version 7.3)"], Reading.Problems(bytes));

    [Fact]
    public void A_binary_file_of_any_kind()
    {
        var bytes = new byte[5000];
        new Random(7).NextBytes(bytes);
        Assert.Equal(["run.csv: this is a binary file: it holds bytes that no text has; export it as CSV with one row a sample, as Parquet, or as HDF5 (MAT: save it as version 7.3)"], Reading.Problems(bytes));
    }

    [Fact]
    public void Bytes_that_are_no_text_after_the_head()
    {
        var rows = string.Concat(Enumerable.Range(0, 40_000).Select(k => $"{k},ok\n"));
        byte[] bytes = [.. Encoding.UTF8.GetBytes("t,w\n" + rows), .. "50000,"u8, 0xB0, (byte)'C', (byte)'\n'];
        Assert.Equal(["run.csv(row 40002, column 'w'): the cell's bytes B043 are no UTF-8; give \"encoding\": \"windows-1252\", or what the file is written in, in the plan's trace"],
            Reading.Problems(bytes));
        Assert.Equal("°C", Reading.Of(bytes, new Dialect { Encoding = "windows-1252" }).Words("w")[^1]);
    }

    [Fact]
    public void A_row_without_end()
    {
        var bytes = Encoding.UTF8.GetBytes("t,v\n0,1\n1,2\n2,\"" + new string('x', 40 << 20));
        Assert.Contains(Reading.Problems(bytes), p => p.Contains("a row goes on for more than 16 MB", StringComparison.Ordinal));
    }

    [Fact]
    public void A_folder_a_missing_file_and_a_misspelt_one()
    {
        var folder = Directory.CreateTempSubdirectory("traces").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "run_a.csv"), "t,v\n0,1\n");
            string Of(string path) => Assert.Throws<InputException>(() => TraceReader.Read(path)).Problems.Single().ToString();
            Assert.Equal($"{folder}: this is a folder; give a file", Of(folder));
            Assert.Equal($"{folder}/ruin_a.csv: there is no such file; did you mean 'run_a.csv'?".Replace('/', Path.DirectorySeparatorChar), Of(Path.Combine(folder, "ruin_a.csv")));
            Assert.Equal("there is no such file", Assert.Throws<InputException>(() => TraceReader.Read(Path.Combine(folder, "none", "x.csv"))).Problems.Single().What);
            Assert.Equal("the path is empty", Assert.Throws<InputException>(() => TraceReader.Read("")).Problems.Single().What);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    [Fact]
    public void Lines_are_counted_through_comments_blank_lines_and_quotes() =>
        Assert.StartsWith("run.csv(row 9, column 'v'): 'x'", Only("# a\n# b\n\nt,v,w\n\n0,1,\"two\nlines\"\n1,2,a\n2,x,b\n", null, Reading.Number("v")), StringComparison.Ordinal);
}
