using System.Globalization;
using System.Numerics;
using System.Text;
using FsCheck.Xunit;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class NumberTests
{
    private static readonly Dialect Rated = new() { Rate = new Fraction(1000), Delimiter = ';' };

    [Theory]
    [InlineData("33", 33.0)]
    [InlineData("-12.345678", -12.345678)]
    [InlineData("+5", 5.0)]
    [InlineData(".5", 0.5)]
    [InlineData("-.5", -0.5)]
    [InlineData("5.", 5.0)]
    [InlineData("1e3", 1000.0)]
    [InlineData("1E+3", 1000.0)]
    [InlineData("-1.5e-3", -0.0015)]
    [InlineData("0000000000000000000000001", 1.0)]
    [InlineData("123456789012345", 123456789012345.0)]
    [InlineData("1234567890123456", 1234567890123456.0)]
    [InlineData("12345678.90123456", 12345678.90123456)]
    [InlineData("9007199254740993", 9007199254740992.0)]
    [InlineData("  7.25 ", 7.25)]
    [InlineData("\"7.25\"", 7.25)]
    [InlineData("-1.482197e-323", -1.5e-323)]
    [InlineData("4.9e-324", double.Epsilon)]
    [InlineData("1.7976931348623157e308", double.MaxValue)]
    [InlineData("0e999999999999", 0.0)]
    [InlineData("0.0000000000000000000000000000001e30", 0.1)]
    public void Numbers_are_read(string text, double value) =>
        Assert.Equal([value], Reading.Of($"v;w\n{text};1\n", Rated).Numbers("v"));

    [Fact]
    public void A_minus_zero_stays_one() =>
        Assert.All(Reading.Of("v;w\n-0;1\n-0.0;1\n-0e5;1\n-0.00000000000000000000;1\n", Rated).Numbers("v"), v => Assert.True(double.IsNegative(v)));

    [Theory]
    [InlineData("")]
    [InlineData("nan")]
    [InlineData("NaN")]
    [InlineData("NAN")]
    [InlineData("  ")]
    [InlineData("\"\"")]
    public void Empty_and_NaN_are_missing(string cell)
    {
        var trace = Reading.Of($"v;w\n1;a\n{cell};{cell}\n2;b\n", Rated);
        Assert.Equal([false, true, false], Enumerable.Range(0, 3).Select(trace.Find("v")!.IsMissing));
        Assert.Equal([false, true, false], Enumerable.Range(0, 3).Select(trace.Find("w")!.IsMissing));
    }

    [Theory]
    [InlineData("inf")]
    [InlineData("Infinity")]
    [InlineData("-inf")]
    [InlineData("1,5")]
    [InlineData("1.2.3")]
    [InlineData("1e")]
    [InlineData("1e+")]
    [InlineData("e5")]
    [InlineData("-")]
    [InlineData("+-1")]
    [InlineData("--1")]
    [InlineData(".")]
    [InlineData("-.")]
    [InlineData("0x10")]
    [InlineData("1 000")]
    [InlineData("1_0")]
    [InlineData("12abc")]
    [InlineData("-nan")]
    [InlineData("1.000.000,5")]
    [InlineData("123456789.12345.78")]
    [InlineData("/")]
    [InlineData(":")]
    public void What_is_no_number_is_told(string cell)
    {
        var problem = Assert.Single(Reading.Problems($"v;w\n1.5;1\n{cell};1\n", Rated with { Decimal = '.' }, [Reading.Number("v")]));
        Assert.StartsWith($"run.csv(row 3, column 'v'): '{cell}' is not a number; ", problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1e309")]
    [InlineData("-1.8e308")]
    [InlineData("1e-500")]
    [InlineData("1e-999999999999999999999")]
    [InlineData("1e999999999999999999999")]
    public void What_no_double_holds_is_told(string cell) =>
        Assert.Equal([$"run.csv(row 2, column 'v'): '{cell}' is beyond what a double holds; give a number between 1e-323 and 1.7e308 in size, or 0"],
            Reading.Problems($"v;w\n{cell};1\n", Rated, [Reading.Number("v")]));

    [Fact]
    public void Only_texts_that_their_double_does_not_give_back_are_kept_exactly()
    {
        var column = Assert.IsType<NumberColumn>(Reading.Of("v;w\n0.1;1\n0.10000000000000001;1\n0.30000000000000004;1\n-1.482197e-323;1\n", Rated).Find("v"));
        Assert.Equal(new Fraction(1, 10), column.Exact(0));
        Assert.Equal(new Fraction(BigInteger.Parse("10000000000000001", CultureInfo.InvariantCulture), BigInteger.Pow(10, 17)), column.Exact(1));
        Assert.Equal(column.Values[0], column.Values[1]);
        Assert.Equal(new Fraction(BigInteger.Parse("30000000000000004", CultureInfo.InvariantCulture), BigInteger.Pow(10, 17)), column.Exact(2));
        Assert.Equal(new Fraction(-1482197, BigInteger.Pow(10, 329)), column.Exact(3));
    }

    [Property(Arbitrary = [typeof(Texts)], MaxTest = 300)]
    public void Seventeen_digits_as_programs_write_them(AnyDouble[] values)
    {
        if (values.Length == 0) return;
        var texts = values.Select(v => v.Value.ToString(Math.Abs(v.Value) is > 1e-4 and < 1e15 ? "0.#################" : "E16", CultureInfo.InvariantCulture)).ToArray();
        var column = (NumberColumn)Reading.Of("v;w\n" + string.Concat(texts.Select(t => t + ";x\n")), Rated with { Decimal = '.' }, [Reading.Number("v")]).Find("v")!;
        for (var k = 0; k < texts.Length; k++)
        {
            Assert.Equal(double.Parse(texts[k], CultureInfo.InvariantCulture), column.Values[k]);
            Assert.Equal(Fraction.FromString(texts[k], NumberStyles.Float, CultureInfo.InvariantCulture), column.Exact(k));
        }
    }

    [Property(Arbitrary = [typeof(Texts)], MaxTest = 300)]
    public void Doubles_come_back_bit_for_bit(AnyDouble[] values, bool comma, bool returns)
    {
        if (values.Length == 0) return;
        var text = new StringBuilder("v;w\n");
        foreach (var value in values)
            text.Append(value.Value.ToString("R", CultureInfo.InvariantCulture).Replace('.', comma ? ',' : '.')).Append(";x").Append(returns ? "\r\n" : "\n");
        var trace = Reading.Of(text.ToString(), Rated with { Decimal = comma ? ',' : '.' }, [Reading.Number("v")]);
        Assert.Equal(values.Select(v => BitConverter.DoubleToInt64Bits(v.Value)), trace.Numbers("v").Select(BitConverter.DoubleToInt64Bits));
        var column = (NumberColumn)trace.Find("v")!;
        for (var k = 0; k < values.Length; k++) Assert.Equal(Fraction.FromString(values[k].Value.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture), column.Exact(k));
    }

    [Property(Arbitrary = [typeof(Texts)], MaxTest = 500)]
    public void Decimals_come_back_exactly_and_rounded_correctly(DecimalSample[] samples, bool comma)
    {
        if (samples.Length == 0) return;
        var text = "v;w\n" + string.Concat(samples.Select(s => (comma ? s.Text.Replace('.', ',') : s.Text) + ";x\n"));
        var column = (NumberColumn)Reading.Of(text, Rated with { Decimal = comma ? ',' : '.' }, [Reading.Number("v")]).Find("v")!;
        for (var k = 0; k < samples.Length; k++)
        {
            Assert.Equal(samples[k].Value, column.Exact(k));
            Assert.Equal(double.Parse(samples[k].Text, NumberStyles.Float, CultureInfo.InvariantCulture), column.Values[k]);
        }
    }

    [Property(MaxTest = 300)]
    public void Every_short_text_is_judged_as_the_grammar_says(byte[] bytes)
    {
        // Letters of numbers come up often enough to make numbers, near numbers and nonsense.
        const string letters = "0123456789.,-+eE x";
        var text = string.Concat(bytes.Take(20).Select(b => letters[b % letters.Length]));
        var cell = Encoding.ASCII.GetBytes(text);
        var byGrammar = ExactDecimal.Parse(DecimalText.Trim(cell), (byte)'.') is not null;
        if (DecimalText.TryFast(cell, (byte)'.', out var fast))
        {
            Assert.True(byGrammar, text);
            Assert.Equal(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), fast);
        }

        var read = DecimalText.Read(cell, (byte)'.', out _, out _);
        Assert.Equal(byGrammar, read is CellText.Number or CellText.OutOfRange);
    }

    [Fact]
    public void All_lengths_and_places_of_the_mark_go_the_fast_way()
    {
        for (var length = 1; length <= 15; length++)
        {
            var digits = "987654321098765"[..length];
            for (var mark = 0; mark <= length; mark++)
            {
                foreach (var text in new[] { digits, digits[..mark] + "." + digits[mark..], "-" + digits[..mark] + "." + digits[mark..] })
                {
                    Assert.True(DecimalText.TryFast(Encoding.ASCII.GetBytes(text), (byte)'.', out var value), text);
                    Assert.Equal(double.Parse(text, CultureInfo.InvariantCulture), value);
                }
            }
        }
    }
}
