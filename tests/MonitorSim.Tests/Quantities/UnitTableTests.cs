using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace MonitorSim.Tests.Quantities;

/// <summary>The table of unit symbols is what the units library says, each number as the exact definition behind its double. Asking the library at run time
/// would cost more than half a second at every start. To write it again, run the tests with MONITORSIM_APPROVE=1.</summary>
public class UnitTableTests
{
    // In order of precedence: where two quantities share a symbol, the first has it.
    private static readonly (string Quantity, string Si)[] Sources =
    [
        ("Duration", "Second"), ("Length", "Meter"), ("Mass", "Kilogram"), ("Angle", "Radian"), ("Force", "Newton"), ("Torque", "NewtonMeter"), ("Energy", "Joule"),
        ("Power", "Watt"), ("Speed", "MeterPerSecond"), ("Frequency", "Hertz"), ("ElectricCurrent", "Ampere"), ("ElectricPotential", "Volt"),
        ("ElectricResistance", "Ohm"), ("MagneticFlux", "Weber"), ("ElectricInductance", "Henry"),
    ];

    [Fact]
    public void The_table_is_in_step_with_the_units_library()
    {
        var library = $"{string.Join('\n', Library())}\n";
        if (Environment.GetEnvironmentVariable("MONITORSIM_APPROVE") == "1") File.WriteAllText(Table(), library);
        Assert.Equal(library, File.ReadAllText(Table()).ReplaceLineEndings("\n"));
    }

    private static IEnumerable<string> Library()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, si) in Sources)
        {
            var quantity = Quantity.ByName[name];
            var siUnit = quantity.UnitInfos.First(unit => unit.Name == si).Value;
            foreach (var unit in quantity.UnitInfos)
            {
                var factor = ExactFactor.Of(UnitConverter.Convert(1, unit.Value, siUnit));
                var value = Convert.ToInt32(unit.Value, CultureInfo.InvariantCulture);
                foreach (var text in UnitAbbreviationsCache.Default.GetUnitAbbreviations(quantity.UnitType, value, CultureInfo.InvariantCulture).Where(seen.Add))
                    yield return string.Create(CultureInfo.InvariantCulture, $"{name}\t{text}\t{factor.Numerator}\t{factor.Denominator}");
            }
        }
    }

    private static string Table([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../src/MonitorSim/Quantities/units.tsv"));
}
