using System.Text;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class DialectTests
{
    [Theory]
    [InlineData(",", ".")]
    [InlineData(";", ".")]
    [InlineData(";", ",")]
    [InlineData("\t", ".")]
    [InlineData("\t", ",")]
    [InlineData("|", ".")]
    [InlineData("|", ",")]
    public void Separator_and_decimal_mark_are_worked_out(string separator, string mark)
    {
        var text = "t;v;on\n0.5;-1.25;off\n0.625;2e-1;on\n".Replace(".", mark, StringComparison.Ordinal).Replace(";", separator, StringComparison.Ordinal);
        var trace = Reading.Of(text);
        Assert.Equal([0, 125_000_000], trace.Times.ToArray());
        Assert.Equal([-1.25, 0.2], trace.Numbers("v"));
        Assert.Equal(["off", "on"], trace.Words("on"));
        var found = Reading.Found(text).Dialect;
        Assert.Equal((separator[0], mark[0]), (found.Delimiter!.Value, found.Decimal!.Value));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_of_all_kinds_will_do(string end)
    {
        var trace = Reading.Of(string.Join(end, "# a log", "t,v", "0,1", "1,2", "2,3") + end);
        Assert.Equal([1.0, 2, 3], trace.Numbers("v"));
        Assert.Equal([1.0, 2, 3], Reading.Of(string.Join(end, "x", "y,z,w", "t,v", "0,1", "1,2", "2,3"), new Dialect { SkipRows = 2 }).Numbers("v"));
    }

    [Fact]
    public void A_plan_of_the_worked_cases_reads_its_trace()
    {
        const string text = "# recorded\n# recorded\nTime;DI_0;table position\n ;;mm\n0;true;36\n4,5;0;-7,5\n";
        var trace = Reading.Of(text,
            new Dialect { Delimiter = ';', Decimal = ',', SkipRows = 2, UnitsRow = true, TimeColumn = "Time", TimeUnit = "ms" },
            [Reading.Word("DI_0"), Reading.Number("table position")]);
        Assert.Equal([0, 4_500_000], trace.Times.ToArray());
        Assert.Equal([36, -7.5], trace.Numbers("table position"));
        Assert.Equal(["true", "0"], trace.Words("DI_0"));
        Assert.Equal("mm", trace.Find("table position")!.Unit);
    }

    [Theory]
    [InlineData(1000, 1, new long[] { 0, 1_000_000, 2_000_000 })]
    [InlineData(60, 1, new long[] { 0, 16_666_667, 33_333_333 })]
    [InlineData(3000, 1, new long[] { 0, 333_333, 666_667 })]
    [InlineData(2, 3, new long[] { 0, 1_500_000_000, 3_000_000_000 })]
    [InlineData(400_000_000, 1, new long[] { 0, 3, 5 })]
    public void A_rate_stands_for_the_time_column(int numerator, int denominator, long[] times)
    {
        var trace = Reading.Of("v,w\n1,on\n2,off\n3,on\n", new Dialect { Rate = new Fraction(numerator, denominator) });
        Assert.Equal(times, trace.Times.ToArray());
        Assert.Equal([1.0, 2, 3], trace.Numbers("v"));
    }

    public static TheoryData<string, byte[]> Encodings()
    {
        const string text = "Zeit;Öl °C;Weg [µm]\n0;1,5;auf\n1;2,5;größer\n";
        byte[] With(Encoding encoding) => [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];
        return new()
        {
            { "utf-8", With(new UTF8Encoding(false)) },
            { "utf-8", With(new UTF8Encoding(true)) },
            { "utf-16le", With(new UnicodeEncoding(false, true)) },
            { "utf-16be", With(new UnicodeEncoding(true, true)) },
            { "utf-16le", With(new UnicodeEncoding(false, false)) },
            { "utf-16be", With(new UnicodeEncoding(true, false)) },
            { "utf-32", With(new UTF32Encoding(false, true)) },
            { "windows-1252", With(Encoding.Latin1) },
        };
    }

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Encodings_are_worked_out_and_can_be_given(string name, byte[] bytes)
    {
        var asGiven = name == "utf-32" ? new[] { (string?)null } : [null, name];
        foreach (var given in asGiven)
        {
            var trace = TraceReader.Read(new MemoryStream(bytes), "run.csv", new Dialect { Encoding = given }, null, out var found);
            Assert.Equal(name, found.Dialect.Encoding);
            Assert.Equal([1.5, 2.5], trace.Numbers("Öl °C"));
            Assert.Equal(["auf", "größer"], trace.Words("Weg [µm]"));
        }
    }

    [Fact]
    public void Latin_1_can_be_given() =>
        Assert.Equal(["größer"], Reading.Of([.. Encoding.Latin1.GetBytes("t;w\n0;größer\n")], new Dialect { Encoding = "latin-1" }).Words("w"));

    [Fact]
    public void A_euro_sign_of_windows() =>
        Assert.Equal(["€"], Reading.Of([.. "t;w\n0;"u8, 0x80, (byte)'\n']).Words("w"));

    [Theory]
    [InlineData("t;v\n0;1\n1;2\n")]
    [InlineData("sep=;\nt;v\n0;1\n1;2\n")]
    [InlineData("# made by hand\n# in two lines, with commas\nt;v\n0;1\n1;2\n")]
    [InlineData("% a\n\n// b\nt;v\n0;1\n1;2\n")]
    [InlineData("Recorder 7\nSerial: 12;34;56\n\nt;v\n0;1\n1;2\n")]
    [InlineData("# t;v\n0;1\n1;2\n")]
    [InlineData("\"t\";\"v\"\n\"0\";\"1\"\n\"1\";\"2\"\n")]
    [InlineData("t ; v\n0 ; 1\n1 ; 2\n")]
    [InlineData("\"t\"; \"v\"\n 0; \"1\"\n 1; \"2\"\n")]
    [InlineData("t;v\n\n0;1\n\n1;2\n\n\n")]
    [InlineData("t;v\ns;mm\n0;1\n1;2\n")]
    [InlineData("t;v\n[s];[mm/s]\n0;1\n1;2\n")]
    [InlineData("t;v\n;\"N·m\"\n0;1\n1;2\n")]
    [InlineData("t;v\ns;-\n0;1\n1;2\n")]
    [InlineData("t;v\ns;°/s²\n0;1\n1;2\n")]
    public void Headers_preambles_and_unit_rows_are_worked_out(string text)
    {
        var trace = Reading.Of(text);
        Assert.Equal([0, 1_000_000_000], trace.Times.ToArray());
        Assert.Equal(["v"], trace.Columns.Select(c => c.Name));
        Assert.Equal([1.0, 2.0], trace.Numbers("v"));

        // What was found, given, reads the same.
        var again = Reading.Of(text, Reading.Found(text).Dialect);
        Assert.Equal([1.0, 2.0], again.Numbers(again.Columns[0].Name));
    }

    [Fact]
    public void Where_things_were_found_is_told()
    {
        var found = Reading.Found("# a\n\nt;v [mm]\n0;1,5\n1;2\n");
        Assert.Equal((3L, 4L, false), (found.HeaderLine!.Value, found.FirstSampleLine, found.ByteOrderMark));
        Assert.Equal(new Dialect { Delimiter = ';', Decimal = ',', SkipRows = 2, UnitsRow = false, Encoding = "utf-8", TimeColumn = "t", TimeUnit = "s" }, found.Dialect);
        Assert.Equal(
            [
                "the time is taken from 't'", "the time in 't' is taken to be in s, because nothing says its unit", "cells are separated by ';'",
                "the decimal mark is ','", "the first 2 lines are passed over",
            ],
            found.Notes);
    }

    [Fact]
    public void Without_a_header_columns_are_counted()
    {
        var trace = Reading.Of("0,5;1,5\n0,75;2,5\n", new Dialect { TimeColumn = "column 1", TimeUnit = "s" });
        Assert.Equal([0, 250_000_000], trace.Times.ToArray());
        Assert.Equal([1.5, 2.5], trace.Numbers("column 2"));
        Assert.Null(Reading.Found("1,on\n2,off\n", new Dialect { Rate = Fraction.One }).HeaderLine);
        Assert.Equal(2, Reading.Of("true;off\nfalse;on\n", new Dialect { Rate = Fraction.One }).Count);
    }

    [Fact]
    public void Digital_inputs_below_a_header_are_no_units()
    {
        var trace = Reading.Of("door,mode,v\non,auto,\noff,auto,1\noff,hand,2\n", new Dialect { Rate = Fraction.One });
        Assert.Equal(3, trace.Count);
        Assert.Equal(["on", "off", "off"], trace.Words("door"));
    }

    [Fact]
    public void A_first_sample_without_any_number_is_no_units_row()
    {
        // The first row of values is NaN and empty: missing, not units.
        Assert.Equal(3, Reading.Of("a,b,v\nnan,,NaN\n1,2,3\n4,5,6\n", new Dialect { Rate = Fraction.One }).Count);
    }

    [Fact]
    public void Units_from_the_row_win_over_those_in_brackets()
    {
        var trace = Reading.Of("t;v [m];w [rad/s]\ns;mm;\n0;1;2\n");
        Assert.Equal("mm", trace.Find("v [m]")!.Unit);
        Assert.Equal("rad/s", trace.Find("w [rad/s]")!.Unit);
    }

    [Fact]
    public void One_column_with_decimal_commas_is_one_column()
    {
        Assert.Equal([0.5, 1.25], Reading.Of("speed\n0,5\n1,25\n", new Dialect { Rate = Fraction.One }).Numbers("speed"));
        Assert.Equal([0.5, 1.25], Reading.Of("speed\n0.5\n1.25\n", new Dialect { Rate = Fraction.One }).Numbers("speed"));
    }

    [Fact]
    public void Quoted_decimal_commas_between_commas() =>
        Assert.Equal([1.5, 2.25], Reading.Of("t,v\n\"0,5\",\"1,5\"\n\"0,75\",\"2,25\"\n").Numbers("v"));

    [Fact]
    public void Another_separator_can_be_given() =>
        Assert.Equal([1.5], Reading.Of("t:v\n0:1.5\n", new Dialect { Delimiter = ':' }).Numbers("v"));

    [Fact]
    public void Quoted_headers_and_words_may_hold_separators_quotes_and_line_ends()
    {
        var trace = Reading.Of("t,\"v, raw\",\"a \"\"b\"\"\"\n0,1,\"x\ny\"\n1,2,\"p,q\"\n");
        Assert.Equal([1.0, 2.0], trace.Numbers("v, raw"));
        Assert.Equal(["x\ny", "p,q"], trace.Words("a \"b\""));
    }

    [Fact]
    public void The_name_decides_which_of_several_columns_is_the_time()
    {
        Assert.Equal("Time [ms]", Reading.Found("tool,Time [ms],temperature\n1,0,20\n1,5,20\n").Dialect.TimeColumn);
        Assert.Equal("when", Reading.Found("x,when\n1,2024-01-01T00:00:00\n2,2024-01-01T00:00:01\n").Dialect.TimeColumn);
        Assert.Equal("tool", Reading.Found("tool,Time [ms]\n1,0\n2,5\n", new Dialect { TimeColumn = "tool" }).Dialect.TimeColumn);
        var rated = Reading.Of("time,v\n7,1\n7,2\n", new Dialect { Rate = Fraction.One });
        Assert.Equal([7.0, 7.0], rated.Numbers("time"));
    }

    [Fact]
    public void Only_wanted_columns_are_kept_and_numbers_win()
    {
        var trace = Reading.Of("t,a,b,c\n0,1,on,x\n1,2,off,y\n", null, [Reading.Word("b"), Reading.Word("a"), Reading.Number("a")]);
        Assert.Equal(["a", "b"], trace.Columns.Select(c => c.Name));
        Assert.Equal([1.0, 2.0], trace.Numbers("a"));
        Assert.Empty(Reading.Of("t,a\n0,x\n", null, []).Columns);
    }

    [Fact]
    public void A_column_is_of_numbers_only_where_every_cell_is_one()
    {
        var trace = Reading.Of("t,a,b,c\n0,1,1.50,\n1,0,x,\n2,,2,\n");
        Assert.Equal([1.0, 0.0, double.NaN], trace.Numbers("a"));
        Assert.Equal(["1.50", "x", "2"], trace.Words("b"));
        Assert.All(trace.Numbers("c"), v => Assert.True(double.IsNaN(v)));
    }

    [Fact]
    public void Many_words_keep_their_order()
    {
        var words = Enumerable.Range(0, 2000).Select(k => $"w{k * 7919 % 997}").ToArray();
        var text = "t,w\n" + string.Concat(words.Select((w, k) => $"{k},{w}\n"));
        Assert.Equal(words, Reading.Of(text).Words("w"));
    }

    [Fact]
    public void The_culture_changes_nothing()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new("de-DE");
            Assert.Equal([1.5, 1234567890.1234567], Reading.Of("t,v\n0.5,1.5\n1.5,1234567890.1234567\n").Numbers("v"));
            Assert.Contains("0.25 s", Reading.Problems("t,v\n0,1\n1,2\n0.75,3\n")[0], StringComparison.Ordinal);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
