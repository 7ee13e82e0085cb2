using Fractions;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How many decimals a column needs so that every limit of its axis can be written exactly where it has a finite decimal,
/// and so that a step is small beside it in any case.</summary>
internal static class GridDigits
{
    private const int Most = 9;

    /// <summary>So many decimal digits of a number survive being read.</summary>
    private const int DigitsOfDoubles = 15;

    /// <summary>A step is at most this share of the smallest limit.</summary>
    private static readonly Fraction Fine = new(1, 5000);

    /// <param name="scale">From raw to SI at the load.</param>
    /// <param name="landmarks">The values that matter, SI; absolute or differences.</param>
    public static int Of(ChannelScale scale, IEnumerable<Fraction> landmarks)
    {
        var digits = 1;
        Fraction? smallest = null;
        foreach (var landmark in landmarks)
        {
            foreach (var raw in new[] { landmark / scale.Factor, (landmark - scale.Offset) / scale.Factor })
            {
                digits = Math.Max(digits, Exact(raw) ?? 0);
                var size = raw.Abs();
                if (size != Fraction.Zero && (smallest is null || size < smallest)) smallest = size;
            }
        }

        if (smallest is { } least)
            while (digits < Most && Fraction.Pow(10, -digits) > least * Fine) digits++;
        return digits;
    }

    /// <summary>How many decimals a second recording needs so that it can also show what the first one shows, where these have finite decimals.</summary>
    /// <param name="scale">From raw to SI at the load.</param>
    /// <param name="first">The same of the first recording.</param>
    /// <param name="grid">The step of the first recording, raw.</param>
    /// <param name="landmarks">The values that matter, SI; absolute or differences.</param>
    public static int OfSecond(ChannelScale scale, ChannelScale first, Fraction grid, IReadOnlyList<Fraction> landmarks)
    {
        var own = Of(scale, landmarks);
        var largest = landmarks.Select(landmark => (landmark / scale.Factor).Abs()).Append(Fraction.One).Max();

        // Ten times the largest landmark still has to be told apart.
        var most = own;
        while (10 * largest * Fraction.Pow(10, most + 1) < Fraction.Pow(10, DigitsOfDoubles)) most++;
        return Exact(grid * first.Factor / scale.Factor, most) is { } same && Exact((first.Offset - scale.Offset) / scale.Factor, most) is { } apart ? Math.Max(own, Math.Max(same, apart)) : own;
    }

    /// <summary>The landmarks of one recorded quantity of an axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="kind">The recorded quantity.</param>
    /// <param name="period">The step of time, ns.</param>
    public static IEnumerable<Fraction> Landmarks(AxisPlan axis, Kind kind, long period)
    {
        var found = axis.Monitors.Cast<object>().Append(axis.Stops).SelectMany(PlanQuantities.Of).Append((Kind.Velocity, axis.Standstill!)).Where(one => one.Item2 is not null).ToList();
        foreach (var (of, quantity) in found)
        {
            if (of == kind) yield return quantity.Exact;
            else if (of == Kind.TemperatureDifference && kind == Kind.Temperature) yield return quantity.ExactDifference;
        }

        if (ChannelChecks.Of(axis).First(channel => channel.Kind == kind).Plan?.Second is { } second) yield return second.Tolerance.ExactDifference;

        // A rate that is derived from this one, and ramps: what changes within one step.
        var step = new Fraction(period, 1_000_000_000);
        var rate = kind switch { Kind.Position => Kind.Velocity, Kind.Velocity => Kind.Acceleration, _ => (Kind?)null };
        if (rate is not { } next || axis.Channels.Torque?.Column is null && kind == Kind.Torque) yield break;
        if (kind == Kind.Velocity || ChannelChecks.Of(axis).First(channel => channel.Kind == next).Plan?.Column is null)
            foreach (var landmark in Landmarks(axis, next, period)) yield return landmark * step;
    }

    private static int? Exact(Fraction raw, int most = Most)
    {
        for (var digits = 0; digits <= most; digits++)
            if ((raw * Fraction.Pow(10, digits)).Denominator.IsOne) return digits;
        return null;
    }
}
