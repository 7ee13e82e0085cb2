using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis;

/// <summary>Checks the quantities of a profile, and finds out from the first of them whether its axis is linear or rotary.</summary>
/// <param name="IsRotary">null while nothing was said.</param>
internal readonly record struct ProfileUnits(bool? IsRotary)
{
    /// <summary>A quantity's SI value.</summary>
    /// <param name="quantity">As written.</param>
    /// <param name="kind">What it has to be.</param>
    /// <param name="allowed">Its range.</param>
    /// <param name="place">Where the user wrote it, such as <c>RampTo(speed)</c>.</param>
    /// <param name="units">The same, knowing more.</param>
    /// <exception cref="InputException">Another kind, or out of range.</exception>
    public decimal Si(Quantity quantity, Kind kind, Allowed allowed, string place, out ProfileUnits units)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        units = Knowing(quantity.Unit, kind, $"'{quantity}'", place);
        return InRange(quantity, allowed, place);
    }

    /// <summary>Checks a unit.</summary>
    public ProfileUnits Knowing(Unit unit, Kind kind, string text, string place)
    {
        var self = this;
        foreach (var rotary in new[] { false, true })
        {
            if (IsRotary == !rotary || !KindUnits.Of(kind, rotary).Dimensions.Contains(unit.Dimension)) continue;
            return kind is Kind.Time or Kind.Rate ? this : new(rotary);
        }

        var expected = new[] { false, true }.Where(rotary => self.IsRotary != !rotary).Select(rotary => KindUnits.Of(kind, rotary)).DistinctBy(k => k.Noun).ToList();
        throw Wrong(place, $"{text} is no {string.Join(" or ", expected.Select(k => k.Noun))}", "would do: " + string.Join(", ", expected.SelectMany(k => k.Examples)));
    }

    private static decimal InRange(Quantity quantity, Allowed allowed, string place)
    {
        var value = quantity.Exact.ToDecimal();
        if (allowed == Allowed.Positive && value <= 0) throw Wrong(place, $"'{quantity}' is not more than 0", "give a value above 0");
        if (allowed == Allowed.NonNegative && value < 0) throw Wrong(place, $"'{quantity}' is negative", "give 0 or more");
        return value;
    }

    private static InputException Wrong(string place, string what, string fix) => new(new Problem($"profile.{place}", what, fix));
}
