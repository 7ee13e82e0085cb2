using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Quantities;

public class UnitTests
{
    private static Fraction F(string text)
    {
        var parts = text.Split('/');
        var value = Fraction.One;
        foreach (var factor in parts[0].Split('*')) value *= factor == "pi" ? Unit.Pi : Fraction.FromString(factor, System.Globalization.CultureInfo.InvariantCulture);
        for (var i = 1; i < parts.Length; i++) value /= parts[i] == "pi" ? Unit.Pi : Fraction.FromString(parts[i], System.Globalization.CultureInfo.InvariantCulture);
        return value;
    }

    // The exact SI values by definition (SI brochure; international yard and pound of 1959).
    [Theory]
    [InlineData("mm", "0.001")]
    [InlineData("µm", "0.000001")]
    [InlineData("um", "0.000001")]
    [InlineData("km", "1000")]
    [InlineData("in", "0.0254")]
    [InlineData("ft", "0.3048")]
    [InlineData("deg", "pi/180")]
    [InlineData("°", "pi/180")]
    [InlineData("mrad", "0.001")]
    [InlineData("arcmin", "pi/10800")]
    [InlineData("rev", "2*pi")]
    [InlineData("s", "1")]
    [InlineData("ms", "0.001")]
    [InlineData("us", "0.000001")]
    [InlineData("µs", "0.000001")]
    [InlineData("\u03BCs", "0.000001")]
    [InlineData("ns", "0.000000001")]
    [InlineData("min", "60")]
    [InlineData("h", "3600")]
    [InlineData("mm/s", "0.001")]
    [InlineData("m/min", "1/60")]
    [InlineData("mm/min", "1/60000")]
    [InlineData("km/h", "1/3.6")]
    [InlineData("mph", "0.44704")]
    [InlineData("rpm", "2*pi/60")]
    [InlineData("1/min", "2*pi/60")]
    [InlineData("min⁻¹", "2*pi/60")]
    [InlineData("r/min", "2*pi/60")]
    [InlineData("rev/s", "2*pi")]
    [InlineData("deg/s", "pi/180")]
    [InlineData("°/s", "pi/180")]
    [InlineData("m/s²", "1")]
    [InlineData("m/s^2", "1")]
    [InlineData("m/s2", "1")]
    [InlineData("m·s⁻²", "1")]
    [InlineData("mm / s²", "0.001")]
    [InlineData("rev/s²", "2*pi")]
    [InlineData("deg/s²", "pi/180")]
    [InlineData("N", "1")]
    [InlineData("kN", "1000")]
    [InlineData("lbf", "4.4482216152605")]
    [InlineData("kgf", "9.80665")]
    [InlineData("N·m", "1")]
    [InlineData("N*m", "1")]
    [InlineData("N m", "1")]
    [InlineData("N⋅m", "1")]
    [InlineData("Nm", "1")]
    [InlineData("kNm", "1000")]
    [InlineData("kN·m", "1000")]
    [InlineData("mN·m", "0.001")]
    [InlineData("N·cm", "0.01")]
    [InlineData("lbf·ft", "1.3558179483314004")]
    [InlineData("lbf·in", "0.1129848290276167")]
    [InlineData("ozf·in", "0.00706155181422604375")]
    [InlineData("kg", "1")]
    [InlineData("g", "0.001")]
    [InlineData("lb", "0.45359237")]
    [InlineData("kg·m²", "1")]
    [InlineData("kg·cm²", "0.0001")]
    [InlineData("N·s/m", "1")]
    [InlineData("N/(m/s)", "1")]
    [InlineData("N·m·s/rad", "1")]
    [InlineData("mm/rev", "0.001/2/pi")]
    [InlineData("Hz", "1")]
    [InlineData("kHz", "1000")]
    [InlineData("1/s", "1")]
    [InlineData("Ω", "1")]
    [InlineData("\u2126", "1")]
    [InlineData("Ohm", "1")]
    [InlineData("mOhm", "0.001")]
    [InlineData("mH", "0.001")]
    [InlineData("V·s", "1")]
    [InlineData("Wb", "1")]
    [InlineData("kJ", "1000")]
    [InlineData("°C", "1")]
    [InlineData("K", "1")]
    [InlineData("°F", "5/9")]
    public void A_unit_has_the_exact_factor_of_its_definition(string symbol, string factor) => InCulture.Each(() =>
    {
        var unit = Unit.Parse(symbol);
        Assert.Equal(F(factor), unit.Factor);
        Assert.Equal(symbol, unit.Symbol);
    });

    [Theory]
    [InlineData("N·m", "J", true)]
    [InlineData("V·s", "Wb", true)]
    [InlineData("Ω", "V/A", true)]
    [InlineData("H", "V·s/A", true)]
    [InlineData("kg·m/s²", "N", true)]
    [InlineData("rpm", "deg/s", true)]
    [InlineData("rpm", "Hz", false)]
    [InlineData("rad", "m", false)]
    [InlineData("rad/s", "1/s", false)]
    [InlineData("N", "N·m", false)]
    public void Units_of_one_dimension_can_stand_for_each_other(string a, string b, bool same) =>
        Assert.Equal(same, Unit.Parse(a).Dimension == Unit.Parse(b).Dimension);

    [Theory]
    [InlineData("mm/sek", "unknown unit 'sek' in 'mm/sek'; did you mean 'sec'?")]
    [InlineData("MM", "unknown unit 'MM'; did you mean 'mm'?")]
    [InlineData("RPM", "unknown unit 'RPM'; did you mean 'rpm'?")]
    [InlineData("nm/S", "unknown unit 'S' in 'nm/S'; did you mean 's'?")]
    [InlineData("furlongs", "unknown unit 'furlongs'; write one such as mm/s, N·m or deg")]
    [InlineData("mm/", "'mm/' is no unit; write one such as mm/s, N·m or deg")]
    [InlineData("(mm", "'(mm' is no unit; write one such as mm/s, N·m or deg")]
    [InlineData("mm)", "'mm)' is no unit; write one such as mm/s, N·m or deg")]
    [InlineData("1", "'1' is no unit; write one such as mm/s, N·m or deg")]
    [InlineData("s^0", "'s^0' is no unit; write one such as mm/s, N·m or deg")]
    [InlineData("", "no unit; write one, such as mm, deg or ms")]
    public void What_is_no_unit_says_what_would_be(string symbol, string error) => InCulture.Each(() =>
    {
        Assert.False(Unit.TryParse(symbol, out _, out var said));
        Assert.Equal(error, said);
    });

    [Theory]
    [InlineData("mm/s", "0.033", "33 mm/s")]
    [InlineData("mm/s", "-0.0123456789", "-12.3457 mm/s")]
    [InlineData("deg", "1.5707963267948966", "90 deg")]
    [InlineData("°", "1.5707963267948966", "90°")]
    [InlineData("m", "1234567.89", "1234568 m")]
    [InlineData("m", "0.000012345678", "0.0000123457 m")]
    [InlineData("m", "1e-9", "1E-09 m")]
    [InlineData("m", "0", "0 m")]
    [InlineData("m", "0.9999999", "1 m")]
    [InlineData("K", "25", "298.15 K")]
    [InlineData("m", "NaN", "no value")]
    public void People_read_values_in_the_unit_that_they_wrote(string unit, string si, string text) => InCulture.Each(() =>
        Assert.Equal(text, Unit.Parse(unit).Format(double.Parse(si, System.Globalization.CultureInfo.InvariantCulture))));

    [Fact]
    public void A_difference_of_temperatures_has_no_zero()
    {
        Assert.Equal("2 K", Unit.Parse("K").FormatDifference(2));
        Assert.Equal(2, Quantity.Parse("2 K").ExactDifference);
        Assert.Equal(100, Quantity.Parse("212 °F").Exact);
        Assert.Equal(0, Quantity.Parse("273.15 K").Exact);
    }

    [Fact]
    public void From_SI_is_the_way_back()
    {
        Assert.Equal(33, Unit.Parse("mm/s").FromSi(new Fraction(33, 1000)));
        Assert.Equal(33, Unit.Parse("mm/s").FromSi(0.033));
        Assert.Equal(double.PositiveInfinity, Unit.Parse("mm/s").FromSi(double.PositiveInfinity));
    }
}
